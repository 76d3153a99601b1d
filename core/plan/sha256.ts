/**
 * SHA-256 of a text's UTF-8 bytes, in hexadecimal: the identity of a library, the same in every place the core runs.
 *
 * Source: FIPS 180-4; its example values are in the tests.
 */
export function sha256(text: string): string {
  const bytes = padded(utf8(text))
  const view = new DataView(bytes.buffer)
  const state = Uint32Array.from(initial)
  const w = new Uint32Array(64)
  for (let at = 0; at < bytes.length; at += 64) {
    for (let i = 0; i < 16; i++) w[i] = view.getUint32(at + 4 * i)
    for (let i = 16; i < 64; i++) {
      const a = w[i - 15]!
      const b = w[i - 2]!
      w[i] = w[i - 16]! + (turn(a, 7) ^ turn(a, 18) ^ (a >>> 3)) + w[i - 7]! + (turn(b, 17) ^ turn(b, 19) ^ (b >>> 10))
    }
    mix(state, w)
  }
  return [...state].map(word => word.toString(16).padStart(8, '0')).join('')
}

const turn = (x: number, by: number): number => (x >>> by) | (x << (32 - by))

function mix(state: Uint32Array, w: Uint32Array): void {
  let [a, b, c, d, e, f, g, h] = state as unknown as [number, number, number, number, number, number, number, number]
  for (let i = 0; i < 64; i++) {
    const one = (h + (turn(e, 6) ^ turn(e, 11) ^ turn(e, 25)) + ((e & f) ^ (~e & g)) + constants[i]! + w[i]!) | 0
    const two = ((turn(a, 2) ^ turn(a, 13) ^ turn(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))) | 0
    h = g
    g = f
    f = e
    e = (d + one) | 0
    d = c
    c = b
    b = a
    a = (one + two) | 0
  }
  for (const [i, word] of [a, b, c, d, e, f, g, h].entries()) state[i] = state[i]! + word
}

/** Message, a one bit, zeros, and its length in bits, to a multiple of 64 bytes. */
function padded(message: readonly number[]): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(Math.ceil((message.length + 9) / 64) * 64)
  bytes.set(message)
  bytes[message.length] = 0x80
  const view = new DataView(bytes.buffer)
  view.setUint32(bytes.length - 8, Math.floor((message.length * 8) / 4294967296))
  view.setUint32(bytes.length - 4, (message.length * 8) >>> 0)
  return bytes
}

function utf8(text: string): number[] {
  const bytes: number[] = []
  for (const sign of text) {
    const code = sign.codePointAt(0)!
    if (code < 0x80) bytes.push(code)
    else if (code < 0x800) bytes.push(0xc0 | (code >> 6), 0x80 | (code & 63))
    else if (code < 0x10000) bytes.push(0xe0 | (code >> 12), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63))
    else bytes.push(0xf0 | (code >> 18), 0x80 | ((code >> 12) & 63), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63))
  }
  return bytes
}

/** First 32 bits of the fractional parts of roots of the first primes, as the standard makes them. */
const primes: readonly number[] = (() => {
  const found: number[] = []
  for (let n = 2; found.length < 64; n++) if (found.every(p => n % p !== 0)) found.push(n)
  return found
})()
const fraction = (root: number): number => Math.floor((root - Math.floor(root)) * 4294967296) >>> 0
const constants: readonly number[] = primes.map(p => fraction(Math.cbrt(p)))
const initial: readonly number[] = primes.slice(0, 8).map(p => fraction(Math.sqrt(p)))
