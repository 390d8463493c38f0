/** Sheets of paper, and what of each a page may use. Millimetres; type in points. */

export const PAPERS = ['letter', 'a4'] as const
export type Paper = (typeof PAPERS)[number]

/** Upright. Letter is 8 1/2 by 11 in (ASME Y14.1, size A); A4 as ISO 216 has it. */
export const PAPER_MM: Readonly<
  Record<Paper, { readonly width: number; readonly height: number }>
> = {
  letter: { width: 215.9, height: 279.4 },
  a4: { width: 210, height: 297 },
}

/** Nothing on any paper is smaller: what doesn't fit at this size takes another line. */
export const LEAST_PT = 8

export const MM_PER_PT = 25.4 / 72

/** From the baseline of one line of text to the next, of its size. */
export const LINE_EM = 1.2

/** More than what common printers can't reach (6.4 mm), so that a page prints at its full size. */
const MARGIN_MM = 9
const HEAD_MM = 21
const FOOT_MM = 8
const GAP_MM = 2

/** A part of a page, from its left top corner. */
export interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export interface Frame {
  readonly head: Box
  readonly body: Box
  readonly foot: Box
}

/** Where head, body and foot are on each page of a paper. */
export const frameOf = (paper: Paper): Frame => {
  const { width, height } = PAPER_MM[paper]
  const inner = { x: MARGIN_MM, width: width - 2 * MARGIN_MM }
  const bodyTop = MARGIN_MM + HEAD_MM + GAP_MM
  const footTop = height - MARGIN_MM - FOOT_MM
  return {
    head: { ...inner, y: MARGIN_MM, height: HEAD_MM },
    body: { ...inner, y: bodyTop, height: footTop - GAP_MM - bodyTop },
    foot: { ...inner, y: footTop, height: FOOT_MM },
  }
}

/** The paper of a locale: A4 everywhere but in the United States and Canada. */
export const paperOf = (locale: string): Paper => (/-(US|CA)$/.test(locale) ? 'letter' : 'a4')
