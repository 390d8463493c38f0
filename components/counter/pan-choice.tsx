import type { ReactNode } from 'react'
import styles from '#components/counter/pan.module.css'
import { PanName } from '#components/counter/pan-name.tsx'
import { sayOnPan } from '#components/counter/say-on-pan.ts'
import { WantedButton } from '#components/counter/wanted-button.tsx'
import { useCounterWords } from '#components/counter/words.tsx'
import type { Finding } from '#lib/needs/judge.ts'
import type { PanFace } from '#lib/rooms/orders/views/counter.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import type { Component } from '#lib/station/station-document.ts'

interface PanChoiceProps {
  /** Counts that a guest wanted it; null where there is some, or the build says so itself. */
  readonly wanted: { readonly isCounted: boolean; readonly onWanted: () => void } | null
  readonly component: Component
  readonly face: PanFace
  readonly currency: string
  readonly tap: (act: Act) => void
  readonly nameOf: (id: string) => string
}

/** A pan as the guest's choice: a tap goes on to no, on the side, with; the plus adds a portion. */
export function PanChoice({ component, face, currency, tap, nameOf, wanted }: PanChoiceProps) {
  const words = useCounterWords()
  const more = face.kind === 'in' || face.kind === 'side' ? face.more : null
  const price = words.sayCents(more ?? 0, currency)
  return (
    <div className={styles.pan} data-face={face.kind} data-why={whyOf(face)}>
      <div className={styles.above}>
        {wanted ? (
          <WantedButton
            name={component.name}
            isCounted={wanted.isCounted}
            place="pan"
            onWanted={wanted.onWanted}
          />
        ) : (
          more !== null && (
            <button
              type="button"
              className={styles.more}
              aria-label={words.moreLabel(component.name, price)}
              onClick={() => tap({ act: 'more', component: component.id })}
            >
              <svg viewBox="0 0 24 24" aria-hidden="true">
                <path d="M12 4v16M4 12h16" />
              </svg>
              <small>{words.sayCents(more)}</small>
            </button>
          )
        )}
      </div>
      <button
        type="button"
        className={styles.face}
        onClick={() => tap({ act: 'tap', component: component.id })}
      >
        <PanName component={component} />
        <FaceWords face={face} nameOf={nameOf} />
      </button>
    </div>
  )
}

const whyNot = ({ handling }: Finding): string => (handling === 'keep-apart' ? 'apart' : 'need')

const whyOf = (face: PanFace): string | undefined => {
  if (face.kind === 'left-out') return whyNot(face.finding)
  if (face.kind === 'cannot') {
    const { standing } = face
    if (standing.kind === 'need') return whyNot(standing.finding)
    return standing.kind === 'unchecked' ? 'need' : standing.kind
  }
  return 'asks' in face && face.asks !== null ? 'asks' : undefined
}

function FaceWords({
  face,
  nameOf,
}: {
  readonly face: PanFace
  readonly nameOf: (id: string) => string
}) {
  const words = useCounterWords()
  const short = (finding: Finding) => (
    <span className={styles.reason}>{sayOnPan(words, finding)}</span>
  )
  const asks = 'asks' in face && face.asks !== null ? short(face.asks) : null
  switch (face.kind) {
    case 'idle':
      return null
    case 'in':
    case 'side':
      return (
        <>
          <strong className={styles.word}>{words.pan.taken(face.kind, face.portions)}</strong>
          {asks}
        </>
      )
    case 'no':
      return <strong className={styles.word}>{words.pan.no}</strong>
    case 'could':
      return (
        <>
          <span className={styles.word}>{words.pan.could}</span>
          {asks}
        </>
      )
    case 'base':
      return (
        <>
          <strong className={styles.word}>{words.pan.with}</strong>
          {asks}
        </>
      )
    case 'other-base':
      return (
        <>
          <span className={styles.word}>{words.pan.otherBase}</span>
          {asks}
        </>
      )
    case 'left-out':
      return (
        <>
          <strong className={styles.word}>{words.pan.no}</strong>
          {short(face.finding)}
        </>
      )
    case 'cannot':
      return <Cannot standing={face.standing} short={short} nameOf={nameOf} />
  }
}

function Cannot({
  standing,
  short,
  nameOf,
}: {
  readonly nameOf: (id: string) => string
  readonly standing: Extract<PanFace, { readonly kind: 'cannot' }>['standing']
  readonly short: (finding: Finding) => ReactNode
}) {
  const words = useCounterWords()
  switch (standing.kind) {
    case 'need':
      return (
        <>
          <strong className={styles.word}>{words.pan.no}</strong>
          {short(standing.finding)}
        </>
      )
    case 'unchecked':
      return <strong className={styles.word}>{words.pan.unchecked}</strong>
    case 'kept':
      return (
        <>
          <strong className={styles.word}>{words.pan.saved}</strong>
          <span className={styles.reason}>{words.savedFor(standing.for, nameOf)}</span>
        </>
      )
    case 'gone':
    case 'not-selling':
      return (
        <strong className={styles.word}>
          {standing.kind === 'not-selling'
            ? words.pan.notSelling
            : standing.notLoaded
              ? words.pan.notLoaded
              : words.pan.gone}
        </strong>
      )
  }
}
