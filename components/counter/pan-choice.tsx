import styles from '#components/counter/pan.module.css'
import type { Component } from '#lib/menu/station-document.ts'
import { sayCents } from '#lib/quantity/money.ts'
import type { PanFace } from '#lib/views/counter.ts'
import type { Act } from '#lib/views/order-act.ts'
import { counter } from '#lib/words/counter-en.ts'

interface PanChoiceProps {
  readonly component: Component
  readonly face: PanFace
  readonly currency: string
  readonly tap: (act: Act) => void
}

/** A pan as the guest's choice: a tap goes on to no, on the side, with; the plus adds a portion. */
export function PanChoice({ component, face, currency, tap }: PanChoiceProps) {
  const more = face.kind === 'in' || face.kind === 'side' ? face.more : null
  const price = sayCents(more ?? 0, currency)
  return (
    <div className={styles.pan} data-face={face.kind} data-why={whyOf(face)}>
      <button
        type="button"
        className={styles.face}
        onClick={() => tap({ act: 'tap', component: component.id })}
      >
        <span className={styles.name}>
          {component.short.map((line) => (
            <span key={line}>{line} </span>
          ))}
        </span>
        <FaceWords face={face} />
      </button>
      {more !== null && (
        <button
          type="button"
          className={styles.more}
          aria-label={counter.moreLabel(component.name, price)}
          onClick={() => tap({ act: 'more', component: component.id })}
        >
          <svg viewBox="0 0 24 24" aria-hidden="true">
            <path d="M12 4v16M4 12h16" />
          </svg>
          <small>{sayCents(more)}</small>
        </button>
      )}
    </div>
  )
}

const whyOf = (face: PanFace): string | undefined =>
  face.kind === 'cannot' ? face.standing.kind : undefined

function FaceWords({ face }: { readonly face: PanFace }) {
  switch (face.kind) {
    case 'idle':
      return null
    case 'in':
    case 'side':
      return <strong className={styles.word}>{counter.pan.taken(face.kind, face.portions)}</strong>
    case 'no':
      return <strong className={styles.word}>{counter.pan.no}</strong>
    case 'could':
      return <span className={styles.word}>{counter.pan.could}</span>
    case 'base':
      return <strong className={styles.word}>{counter.pan.with}</strong>
    case 'other-base':
      return <span className={styles.word}>{counter.pan.otherBase}</span>
    case 'cannot':
      if (face.standing.kind === 'need')
        return (
          <>
            <strong className={styles.word}>{counter.pan.no}</strong>
            <span className={styles.reason}>
              {counter.declared(face.standing.need, face.standing.declared)}
            </span>
          </>
        )
      return (
        <strong className={styles.word}>
          {face.standing.kind === 'gone' ? counter.pan.gone : counter.pan.notSelling}
        </strong>
      )
  }
}
