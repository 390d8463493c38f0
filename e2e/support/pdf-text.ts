/** A PDF as Chromium writes it, read back: its pages with their sizes and the lines of text on them. */
import { inflateSync } from 'node:zlib'

export interface PdfPage {
  /** Points. */
  readonly width: number
  readonly height: number
  /** In the order in which they are drawn. */
  readonly lines: readonly string[]
}

interface PdfObject {
  readonly head: string
  readonly stream: string
}

const objectsOf = (pdf: Buffer): ReadonlyMap<string, PdfObject> => {
  const text = pdf.toString('latin1')
  const found = new Map<string, PdfObject>()
  for (const { 1: id = '', index } of text.matchAll(/(?:^|\n)(\d+) 0 obj\s/g)) {
    const from = text.indexOf(' obj', index) + 4
    const head = text.slice(from, text.indexOf('endobj', from))
    const begins = /stream\r?\n/.exec(head)
    const length = /\/Length (\d+)/.exec(head)?.[1]
    if (begins === null || length === undefined) {
      found.set(id, { head, stream: '' })
      continue
    }
    const at = from + begins.index + begins[0].length
    const raw = pdf.subarray(at, at + Number(length))
    const stream = head.includes('/FlateDecode') ? inflateSync(raw) : raw
    found.set(id, { head: head.slice(0, begins.index), stream: stream.toString('latin1') })
  }
  return found
}

const decoded = (hex: string): string => Buffer.from(hex, 'hex').swap16().toString('utf16le')

/** Which letters a font's codes stand for, by its ToUnicode map. */
const lettersOf = (map: string): ReadonlyMap<number, string> => {
  const letters = new Map<number, string>()
  for (const [, chars = ''] of map.matchAll(/beginbfchar\s([\s\S]*?)endbfchar/g))
    for (const [, code = '', letter = ''] of chars.matchAll(/<([0-9A-F]+)> <([0-9A-F]+)>/g))
      letters.set(Number.parseInt(code, 16), decoded(letter))
  for (const [, ranges = ''] of map.matchAll(/beginbfrange\s([\s\S]*?)endbfrange/g))
    for (const [, first = '', last = '', letter = ''] of ranges.matchAll(
      /<([0-9A-F]+)> <([0-9A-F]+)> <([0-9A-F]+)>/g,
    ))
      for (let code = Number.parseInt(first, 16); code <= Number.parseInt(last, 16); code += 1) {
        const sign = Number.parseInt(letter, 16) + code - Number.parseInt(first, 16)
        letters.set(code, String.fromCodePoint(sign))
      }
  return letters
}

const referred = (text: string, name: string): string | undefined =>
  new RegExp(`/${name} (\\d+) 0 R`).exec(text)?.[1]

export const pdfPages = (pdf: Buffer): readonly PdfPage[] => {
  const objects = objectsOf(pdf)
  const read = (id: string | undefined): PdfObject =>
    objects.get(id ?? '') ?? { head: '', stream: '' }
  return [...objects.values()]
    .filter(({ head }) => /\/Type \/Page\b(?!s)/.test(head))
    .map(({ head }) => {
      const fonts = new Map<string, ReadonlyMap<number, string>>()
      const named = /\/Font <<([^>]*)>>/.exec(head)?.[1] ?? ''
      for (const [, font = '', id] of named.matchAll(/\/(F\d+) (\d+) 0 R/g))
        fonts.set(font, lettersOf(read(referred(read(id).head, 'ToUnicode')).stream))
      const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(head) ?? []
      const { stream } = read(referred(head, 'Contents'))
      const lines = [...stream.matchAll(/\bBT\s([\s\S]*?)\bET\b/g)].map(([, drawn = '']) => {
        const letters = fonts.get(/\/(F\d+) /.exec(drawn)?.[1] ?? '')
        // A code of one byte where the font has at most 256 letters.
        return [...drawn.matchAll(/<([0-9A-F]+)> Tj/g)]
          .flatMap(([, codes = '']) => codes.match(/../g) ?? [])
          .map((code) => letters?.get(Number.parseInt(code, 16)) ?? '\uFFFD')
          .join('')
          .trim()
      })
      return { width: Number(width), height: Number(height), lines }
    })
}
