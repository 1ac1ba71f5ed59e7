import { FileRefusal } from "../file/package/file-refusal";

/** ECDSA over P-256 with SHA-256 (FIPS 186-5): every runtime and browser that this runs in has it. */
const KIND = { name: "ECDSA", namedCurve: "P-256" } as const;
const SIGNING = { name: "ECDSA", hash: "SHA-256" } as const;
/** In front of a public key, so that a reader sees what it is for. */
const NAME = "ECDSA-P256";

function toText(bytes: ArrayBuffer): string {
  const letters = String.fromCharCode(...new Uint8Array(bytes));
  return btoa(letters).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

function toBytes(text: string): Uint8Array<ArrayBuffer> {
  const letters = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
  return Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
}

const messageOf = (digest: string) => new TextEncoder().encode(digest);

async function publicText(key: CryptoKey): Promise<string> {
  return `${NAME} ${toText(await crypto.subtle.exportKey("raw", key))}`;
}

/** A new pair of keys: the private one as the text of a file that its owner keeps, the public one as others read it. */
export async function newKeyPair(): Promise<{ readonly privateText: string; readonly publicKey: string }> {
  const pair = await crypto.subtle.generateKey(KIND, true, ["sign", "verify"]);
  const publicKey = await publicText(pair.publicKey);
  const secret = await crypto.subtle.exportKey("jwk", pair.privateKey);
  const { kty, crv, x, y, d } = secret;
  return { privateText: `${JSON.stringify({ kty, crv, x, y, d, publicKey }, null, 2)}\n`, publicKey };
}

/** What signs copies. */
export interface Signer {
  readonly publicKey: string;
  sign(digest: string): Promise<string>;
}

/** Reads a private key. @throws FileRefusal where the text is none. */
export async function signerFrom(privateText: string): Promise<Signer> {
  try {
    const { kty, crv, x, y, d } = JSON.parse(privateText) as JsonWebKey;
    const secret = { kty, crv, x, y, d } as JsonWebKey;
    const key = await crypto.subtle.importKey("jwk", secret, KIND, false, ["sign"]);
    const open = await crypto.subtle.importKey("jwk", { kty, crv, x, y } as JsonWebKey, KIND, true, [
      "verify",
    ]);
    return {
      publicKey: await publicText(open),
      sign: async (digest) => toText(await crypto.subtle.sign(SIGNING, key, messageOf(digest))),
    };
  } catch {
    throw new FileRefusal("The key file holds no private key; make one with share --new-key FILE.");
  }
}

/** True where a signature was made over a digest with the private half of a public key. */
export async function isSignedBy(publicKey: string, digest: string, signature: string): Promise<boolean> {
  const [name, text] = publicKey.trim().split(/\s+/);
  if (name !== NAME || text === undefined) return false;
  try {
    const key = await crypto.subtle.importKey("raw", toBytes(text), KIND, false, ["verify"]);
    return await crypto.subtle.verify(SIGNING, key, toBytes(signature), messageOf(digest));
  } catch {
    return false;
  }
}
