/** How much a caution weighs, the heaviest first. */
const CAUTION_RANKS = ["danger", "spoils the blade", "note"] as const;

export type CautionRank = (typeof CAUTION_RANKS)[number];

/** What the trade would be wary of. */
export interface Caution {
  /** How much it weighs; the weightiest are told first. */
  readonly rank: CautionRank;
  /** At most 60 characters, for a narrow column. */
  readonly short: string;
  /** One sentence or two, each of at most 40 words. */
  readonly full: string;
  /** What has to change before all else, a sentence; "" where nothing has to. */
  readonly instead: string;
}

/** A caution of a rank. */
export function caution(rank: CautionRank, short: string, full: string, instead = ""): Caution {
  return { rank, short, full, instead };
}

/** A caution as a part of a sentence, without its full stop. */
export function cautionClause({ full }: Caution): string {
  return full.replace(/\.$/, "");
}

/** The heaviest first, each sentence once; among equals the order stays. */
export function ranked(cautions: readonly Caution[]): readonly Caution[] {
  const seen = new Set<string>();
  const once = cautions.filter(({ full }) => !seen.has(full) && seen.add(full));
  return CAUTION_RANKS.flatMap((rank) => once.filter((each) => each.rank === rank));
}
