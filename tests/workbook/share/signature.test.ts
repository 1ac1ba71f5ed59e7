import { createPublicKey, verify as verifiedBy } from "node:crypto";
import { expect, it } from "vitest";
import { FileRefusal } from "../../../src/workbook/file/package/file-refusal";
import { isSignedBy, newKeyPair, signerFrom } from "../../../src/workbook/share/signature";

// Outside check: signatures are held against Node's own implementation of ECDSA, which shares no code with Web Crypto's
// caller here. Form of the keys: RFC 7517 (JWK) and SEC 1, 2.3.3 (uncompressed point: 04, x, y).

const DIGEST = "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08";
const pair = await newKeyPair();
const signer = await signerFrom(pair.privateText);

it("makes pairs of keys, each another, the private half in a file that says its public one", async () => {
  const file = JSON.parse(pair.privateText);
  expect(Object.keys(file).sort()).toEqual(["crv", "d", "kty", "publicKey", "x", "y"]);
  expect([file.kty, file.crv, file.publicKey]).toEqual(["EC", "P-256", pair.publicKey]);
  expect(pair.privateText.endsWith("}\n")).toBe(true);
  const [name, point = ""] = pair.publicKey.split(" ");
  const bytes = Buffer.from(point, "base64url");
  expect([name, bytes.length, bytes[0]]).toEqual(["ECDSA-P256", 65, 4]);
  expect(point).toMatch(/^[\w-]+$/);
  expect((await newKeyPair()).publicKey).not.toBe(pair.publicKey);
  expect(signer.publicKey).toBe(pair.publicKey);
});

it("signs so that others can check it without us", async () => {
  const { kty, crv, x, y } = JSON.parse(pair.privateText);
  const key = createPublicKey({ key: { kty, crv, x, y }, format: "jwk" });
  const signature = await signer.sign(DIGEST);
  expect(signature).toMatch(/^[\w-]+$/);
  const check = (message: string) =>
    verifiedBy(
      "sha256",
      Buffer.from(message),
      { key, dsaEncoding: "ieee-p1363" },
      Buffer.from(signature, "base64url"),
    );
  expect([check(DIGEST), check(DIGEST.replace("9", "8"))]).toEqual([true, false]);
});

it("takes a signature for right with its key and its digest alone", async () => {
  const signature = await signer.sign(DIGEST);
  expect(await isSignedBy(pair.publicKey, DIGEST, signature)).toBe(true);
  expect(await isSignedBy(`  ${pair.publicKey.replace(" ", "\t ")}\n`, DIGEST, signature)).toBe(true);
  const other = (await newKeyPair()).publicKey;
  const altered = `${signature[0] === "A" ? "B" : "A"}${signature.slice(1)}`;
  for (const [key, digest, text] of [
    [other, DIGEST, signature],
    [pair.publicKey, DIGEST.replace("9", "8"), signature],
    [pair.publicKey, DIGEST, altered],
    [pair.publicKey, DIGEST, ""],
    [pair.publicKey, DIGEST, "no signature!"],
    [pair.publicKey.replace("P256", "P384"), DIGEST, signature],
    [pair.publicKey.split(" ")[1] ?? "", DIGEST, signature],
    ["ECDSA-P256", DIGEST, signature],
    ["ECDSA-P256 AAAA", DIGEST, signature],
    ["", DIGEST, signature],
  ] as const)
    expect(await isSignedBy(key, digest, text), `${key} ${text}`).toBe(false);
});

it("refuses a file that holds no private key", async () => {
  const { d: _, ...open } = JSON.parse(pair.privateText);
  for (const words of ["", "no key", "{}", JSON.stringify(open), '{"kty":"EC","crv":"P-256","d":"AA"}']) {
    await expect(signerFrom(words)).rejects.toThrow(FileRefusal);
    await expect(signerFrom(words)).rejects.toThrow(
      "holds no private key; make one with share --new-key FILE",
    );
  }
});
