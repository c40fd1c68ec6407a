/** Letters that no accent can be taken from, as ICAO Doc 9303 part 3, section 6 transliterates them (from memory). */
const WRITTEN_OUT: Readonly<Record<string, string>> = {
  ä: "ae",
  ö: "oe",
  ü: "ue",
  å: "aa",
  ø: "oe",
  æ: "ae",
  œ: "oe",
  ß: "ss",
  þ: "th",
  ð: "d",
  đ: "d",
  ł: "l",
  ı: "i",
  ħ: "h",
  ŋ: "n",
  ŧ: "t",
};

const ROOM_FOR_NUMBER = 3;
const LONGEST = 30 - ROOM_FOR_NUMBER;
const SHORTEST = 3;
/** For names that leave too little of the letters a to z. */
const STAND_IN = "learner";

/** A name in the letters a to z with single spaces, for comparing and for sign-in names; other scripts leave nothing. */
export function foldedName(name: string): string {
  return name
    .normalize("NFC")
    .toLowerCase()
    .replace(/[^\p{ASCII}]/gu, (letter) => WRITTEN_OUT[letter] ?? letter)
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/['’]/g, "")
    .replace(/[^a-z0-9]+/g, " ")
    .trim();
}

/** A sign-in name made of the first and the last word of a name, with a number where it is taken. */
export function proposeSignInName(name: string, isTaken: (signInName: string) => boolean): string {
  const words = foldedName(name).split(" ").filter(Boolean);
  const ends = words.length > 1 ? [words[0], words[words.length - 1]] : words;
  const short = ends.join(".").slice(0, LONGEST).replace(/\.$/, "");
  const base = short.length >= SHORTEST ? short : [STAND_IN, ...ends].join(".");
  for (let number = 1; ; number++) {
    const proposed = number === 1 ? base : `${base}${number}`;
    if (!isTaken(proposed)) return proposed;
  }
}
