import { KERF, PIECE_LENGTH, PIECES, TRIM, USUAL_KERF, USUAL_TRIM } from "../../core/stock/cutting-limits";
import { type NumberOptions, number, optionalNumber, rangeParameter } from "../parameters";

const pieceLength: NumberOptions = {
  ...PIECE_LENGTH,
  quantity: "length",
  label: "length",
  help: "Length of each piece in mm; one cell or a column.",
};

export const pieceLengths = rangeParameter(number(pieceLength));

export const quantities = rangeParameter(
  number({
    ...PIECES,
    label: "quantity",
    quantity: "count",
    help: "Pieces of each length, a column beside the lengths.",
  }),
);

export const barLengths = rangeParameter(
  number({
    ...PIECE_LENGTH,
    quantity: "length",
    label: "bar length",
    help: "Length of the bars in mm; a column where several lengths are on offer.",
  }),
);

export const kerf = optionalNumber({
  ...KERF,
  quantity: "length",
  label: "kerf",
  fallback: USUAL_KERF,
  help: "Width of a cut in mm.",
});

export const trim = optionalNumber({
  ...TRIM,
  quantity: "length",
  label: "trim",
  fallback: USUAL_TRIM,
  help: "Cut off each bar before the first piece, both ends together, in mm.",
});
