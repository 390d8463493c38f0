/** When a label was printed and of which revision, on labels without a margin to say it in. */
import { type Face, labelFaces } from '#lib/paper/labels/face-layout.ts'
import type { LabelTexts } from '#lib/paper/labels/label-texts.ts'

/**
 * A label of a size, millimetres, with the mark small beside what it is; without it where it would take
 * another label for that. @throws RangeError where a label is too small for any words
 */
export const markedFaces = (
  texts: LabelTexts,
  mark: string,
  size: { readonly width: number; readonly height: number },
): { readonly faces: readonly Face[]; readonly isMarked: boolean } => {
  const faces = labelFaces(texts, size)
  const about = [texts.about, mark].filter((one) => one !== '').join(' · ')
  const marked = labelFaces({ ...texts, about }, size)
  // Where a label is crowded, what is said beside its name gives way.
  const isSaid = marked.some(({ texts: laid }) =>
    laid.some(({ lines }) => lines.join(' ').includes(mark)),
  )
  return marked.length > faces.length || !isSaid
    ? { faces, isMarked: false }
    : { faces: marked, isMarked: true }
}
