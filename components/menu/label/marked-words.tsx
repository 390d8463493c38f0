import styles from '#components/menu/label/package.module.css'
import { useLabelFormWords } from '#components/menu/label/words.tsx'
import type { Mark } from '#lib/station/label-words/read-list.ts'

interface Piece {
  readonly from: number
  readonly text: string
  /** What the words here are about; none for what stands between. */
  readonly codes: readonly string[]
  readonly isAsk: boolean
}

/** The text in pieces: a word that is marked, together with marks that begin inside it. */
const piecesOf = (text: string, marks: readonly Mark[]): readonly Piece[] => {
  const pieces: Piece[] = []
  let at = 0
  const plain = (to: number) => {
    if (to > at) pieces.push({ from: at, text: text.slice(at, to), codes: [], isAsk: false })
  }
  for (let next = 0; next < marks.length; ) {
    const from = marks[next]?.from ?? text.length
    let to = from
    const codes = new Set<string>()
    let isAsk = true
    for (let mark = marks[next]; mark && (mark.from === from || mark.from < to); ) {
      to = Math.max(to, mark.to)
      codes.add(mark.code)
      isAsk = isAsk && mark.proposes === 'ask'
      next += 1
      mark = marks[next]
    }
    plain(from)
    pieces.push({ from, text: text.slice(from, to), codes: [...codes], isAsk })
    at = to
  }
  plain(text.length)
  return pieces
}

/** The words as they were typed, those underlined that name an allergen, or may hold one. */
export function MarkedWords({
  text,
  marks,
}: {
  readonly text: string
  readonly marks: readonly Mark[]
}) {
  const words = useLabelFormWords()
  const pieces = piecesOf(text, marks)
  const count = pieces.filter(({ codes }) => codes.length > 0).length
  return (
    <>
      <section className={styles.text} aria-label={words.package}>
        {pieces.map(({ from, text: said, codes, isAsk }) =>
          codes.length === 0 ? (
            <span key={from}>{said}</span>
          ) : (
            <mark key={from} data-ask={isAsk || undefined} title={words.markOf(codes)}>
              {said}
            </mark>
          ),
        )}
      </section>
      <p className={styles.note}>{count === 0 ? words.noMarks : words.marked(count)}</p>
    </>
  )
}
