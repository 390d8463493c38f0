import { Fragment } from 'react'
import styles from '#components/counter/panel.module.css'
import type { Marked } from '#lib/rooms/orders/views/reading.ts'
import type { Said } from '#lib/words/said-here.ts'

/** One sentence; what is new stands out, and what was said and holds no more is struck out. */
function Sentence({ said, mark }: { readonly said: Said; readonly mark: Marked['mark'] }) {
  const words = (
    <>
      {said.before}
      <strong>{said.strong}</strong>
      {said.rest}
    </>
  )
  if (mark === 'new') return <ins className={styles.new}>{words}</ins>
  return mark === 'gone' ? <del className={styles.gone}>{words}</del> : <span>{words}</span>
}

/** What is said to the guest, in its quotation marks, with what changed since it was said. */
export function MarkedSentences({
  sentences,
  marked,
}: {
  readonly sentences: readonly Said[]
  /** Of each sentence. */
  readonly marked: readonly Marked[]
}) {
  return (
    <p data-legible="read-back">
      “
      {sentences.map((said, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: sentences have no other identity
        <Fragment key={index}>
          {index > 0 && ' '}
          <Sentence said={said} mark={marked[index]?.mark ?? 'same'} />
        </Fragment>
      ))}
      ”
    </p>
  )
}
