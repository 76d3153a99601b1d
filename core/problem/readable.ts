// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
const steering = /[\u0000-\u0008\u000b-\u001f]/g
/** What steers a terminal, and what hides, joins or turns text without being seen. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
const unseen = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/g
/** Longer than any id, name or path that a person types. */
const longestWord = 400
const shownOfLong = 100

const named = (character: string): string => `[U+${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}]`

/**
 * Text that quotes what somebody typed or loaded, fit to be read: what cannot be seen is named, since it is often the very fault, and what
 * is longer than any word is cut.
 *
 * @example readable('24\u200bg') // '24[U+200B]g'
 */
export const readable = (text: string): string =>
  text
    .replace(unseen, named)
    .split(' ')
    .map(word => (word.length > longestWord ? `${word.slice(0, shownOfLong)}... (cut)` : word))
    .join(' ')

/** Text without characters that steer a terminal, each named instead; line breaks and tabs stay. */
export const unsteered = (text: string): string => text.replace(steering, named)
