/** Cyrillic letters by what they look like on paper: how a Latin name is mistyped on a Cyrillic keyboard. */
const LOOK: Readonly<Record<string, string>> = {
  А: "A",
  В: "B",
  Е: "E",
  К: "K",
  М: "M",
  Н: "H",
  О: "O",
  Р: "P",
  С: "C",
  Т: "T",
  У: "Y",
  Х: "X",
};

/** Cyrillic letters by sound: the usual transliteration of GOST names. */
const SOUND: Readonly<Record<string, string>> = {
  А: "A",
  Б: "B",
  В: "V",
  Г: "G",
  Д: "D",
  Е: "E",
  К: "K",
  М: "M",
  Н: "N",
  О: "O",
  П: "P",
  Р: "R",
  С: "S",
  Т: "T",
  У: "U",
  Ф: "F",
  Х: "KH",
  Ц: "TS",
  Ш: "SH",
  Ю: "YU",
};

/** Х is transliterated in four ways in print. */
const SOUNDS_OF_KHA = ["KH", "CH", "H", "X"];

const CYRILLIC = /[А-Я]/g;

/** Upper-case text with Cyrillic letters replaced by the Latin ones they look like. */
export function byLook(text: string): string {
  return text.replace(CYRILLIC, (letter) => LOOK[letter] ?? SOUND[letter] ?? letter);
}

/** Upper-case text with Cyrillic letters replaced by the Latin ones they sound like. */
export function bySound(text: string): string {
  return text.replace(CYRILLIC, (letter) => SOUND[letter] ?? letter);
}

function spellingsOf(letter: string): string[] {
  const sounds = letter === "Х" ? SOUNDS_OF_KHA : [SOUND[letter] ?? letter];
  const look = LOOK[letter];
  return look === undefined || sounds.includes(look) ? sounds : [...sounds, look];
}

/**
 * Every Latin spelling under which a Cyrillic name is met: by sound, by look, and mixed. Spellings
 * that begin with a bare H are left out: H12 is a hot-work steel of another system, not Х12.
 */
export function latinSpellings(name: string): string[] {
  let spellings = [""];
  for (const letter of name) {
    const ends = spellingsOf(letter);
    spellings = spellings.flatMap((start) => ends.map((end) => start + end));
  }
  return spellings.filter((spelling) => !spelling.startsWith("H"));
}

/** True where a name holds Cyrillic letters. */
export function isCyrillic(name: string): boolean {
  return /[А-Я]/.test(name);
}
