/**
 * How wide letters are, thousandths of their size, rounded up: Atkinson Hyperlegible Next with
 * tabular figures, measured in Chromium from the font that the screens are drawn with; held against
 * the browser by e2e/line-on-paper.spec.ts.
 */

export type Weight = 'regular' | 'bold'

const FIRST = 32

/** From the space to the tilde. */
const ASCII: Readonly<Record<Weight, readonly number[]>> = {
  regular: [
    280, 286, 301, 651, 592, 919, 731, 160, 299, 299, 485, 606, 210, 362, 210, 357, 632, 632, 632,
    632, 632, 632, 632, 632, 632, 632, 210, 210, 553, 628, 553, 450, 778, 626, 613, 645, 669, 569,
    552, 694, 694, 392, 512, 631, 541, 824, 693, 714, 592, 724, 614, 592, 478, 690, 563, 856, 623,
    535, 607, 317, 342, 344, 552, 372, 243, 525, 566, 485, 564, 538, 309, 558, 550, 252, 245, 492,
    262, 845, 550, 548, 566, 574, 359, 471, 309, 540, 446, 669, 481, 434, 460, 344, 237, 344, 555,
  ],
  bold: [
    313, 303, 390, 765, 610, 969, 725, 210, 335, 335, 485, 595, 271, 373, 272, 402, 632, 632, 632,
    632, 632, 632, 632, 632, 632, 632, 272, 272, 569, 612, 569, 509, 781, 678, 643, 658, 689, 597,
    566, 718, 701, 425, 561, 664, 552, 858, 717, 747, 629, 757, 650, 610, 511, 686, 612, 886, 685,
    602, 618, 340, 403, 344, 582, 400, 288, 552, 596, 510, 596, 563, 364, 593, 571, 292, 259, 555,
    318, 882, 571, 576, 596, 599, 386, 508, 369, 567, 511, 721, 540, 502, 506, 381, 254, 381, 537,
  ],
}

/** What our words use beside those. */
const MORE: Readonly<Record<string, readonly [regular: number, bold: number]>> = {
  '°': [352, 394],
  '×': [532, 536],
  '·': [240, 294],
  '–': [504, 501],
  '’': [236, 269],
  '“': [399, 479],
  '”': [399, 479],
  '…': [670, 781],
  ß: [582, 621],
  ø: [548, 576],
}

/** Wider than any letter of ours: of a script that another font draws, up to a full-width sign. */
const UNKNOWN = 1_100

/** Marks that stand on the letter before. */
const RIDES = /\p{M}/u

/** An accent changes no width by more than this. */
const ACCENT = 20

const widthOf = (sign: string, weight: Weight): number => {
  const known = ASCII[weight][(sign.codePointAt(0) ?? 0) - FIRST]
  if (known !== undefined) return known
  const more = MORE[sign]
  if (more !== undefined) return weight === 'bold' ? more[1] : more[0]
  if (RIDES.test(sign)) return 0
  const bare = sign.normalize('NFD')
  return bare.length > 1 && ASCII[weight][(bare.codePointAt(0) ?? 0) - FIRST] !== undefined
    ? widthOf(bare.charAt(0), weight) + ACCENT
    : UNKNOWN
}

/** Kerning and the rounding of a printer's own type. */
const SLACK = 1.01

/** No less than the width of a text in so many times its size. */
export const widthEm = (text: string, weight: Weight): number =>
  ([...text].reduce((sum, sign) => sum + widthOf(sign, weight), 0) / 1_000) * SLACK
