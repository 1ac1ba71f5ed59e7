import { type NumberOptions, number, optionalNumber, rangeParameter } from "../parameters";

const LENGTH = { quantity: "length", unit: "mm" } as const;

const pieceLength: NumberOptions = {
  ...LENGTH,
  label: "length",
  min: 0.1,
  max: 30_000,
  help: "Length of each piece in mm; one cell or a column.",
};

export const pieceLengths = rangeParameter(number(pieceLength));

export const quantities = rangeParameter(
  number({
    label: "quantity",
    quantity: "count",
    unit: "",
    min: 0,
    max: 100_000,
    whole: true,
    help: "Pieces of each length, a column beside the lengths.",
  }),
);

export const barLengths = rangeParameter(
  number({
    ...LENGTH,
    label: "bar length",
    min: 0.1,
    max: 30_000,
    help: "Length of the bars in mm; a column where several lengths are on offer.",
  }),
);

export const kerf = optionalNumber({
  ...LENGTH,
  label: "kerf",
  min: 0,
  max: 20,
  fallback: 1.2,
  help: "Width of a cut in mm.",
});

export const trim = optionalNumber({
  ...LENGTH,
  label: "trim",
  min: 0,
  max: 1000,
  fallback: 10,
  help: "Cut off each bar before the first piece, both ends together, in mm.",
});
