import { type ReactNode, useState } from 'react'
import styles from '#components/hand-over/panels.module.css'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import { Connection } from '#components/live/connection.tsx'
import type { OnShelf } from '#lib/rooms/shelf/views/hand-over.ts'
import { linesOfParts } from '#lib/service/mark.ts'
import { sayBuild } from '#lib/service/tickets.ts'

/** What the guest said, beside what the wrap says: the student compares. */
function Compare({ build }: { readonly build: OnShelf }) {
  const words = useHandOverWords()
  const { alike } = build
  const only = alike ? words.markLines(alike.differs) : []
  return (
    <>
      <h2 className={styles.compare}>{words.compare}</h2>
      {alike && <p className={styles.alone}>{words.alikeBeware}</p>}
      <div className={styles.wrap}>
        <b>{sayBuild(build.name)}</b>
        {words.markLines(build.mark).map((line, index) => (
          <span
            key={line}
            data-need={index >= linesOfParts(build.mark)}
            data-differs={only.includes(line)}
          >
            {line}
          </span>
        ))}
        {build.told.length > 0 && <span data-told="">{words.told(build.told)}</span>}
      </div>
    </>
  )
}

/**
 * A kept-apart build, shown alone. The guest says what it was kept from; only then does the mark
 * show, so that nobody reads it out.
 */
export function AskPanel({
  build,
  busy,
  paidLine,
  onHandOver,
  onNotSure,
  onBack,
}: {
  readonly build: OnShelf
  readonly busy: boolean
  readonly paidLine: ReactNode
  readonly onHandOver: () => void
  readonly onNotSure: () => void
  readonly onBack: () => void
}) {
  const words = useHandOverWords()
  const [step, setStep] = useState<'ask' | 'compare' | 'differs'>('ask')
  return (
    <section className={styles.panel} aria-labelledby="ask-title">
      <h1 id="ask-title" className={styles.name} data-asked={step !== 'ask'}>
        {sayBuild(build.name)}
      </h1>
      <div className={styles.link}>
        <Connection />
      </div>
      {step === 'ask' && (
        <>
          <p className={styles.alone}>{words.alone}</p>
          <div className={styles.ask}>
            <h2>{words.ask}</h2>
            <p className={styles.question}>“{words.question}”</p>
            <p>{words.listen}</p>
          </div>
          {paidLine}
        </>
      )}
      {step !== 'ask' && <Compare build={build} />}
      {step === 'differs' && (
        <p className={styles.keep} role="alert">
          {words.notSameThen}
        </p>
      )}
      {step !== 'differs' && (
        <div className={styles.choices} key={step}>
          {step === 'ask' ? (
            <button type="button" className={styles.yes} onClick={() => setStep('compare')}>
              {words.answered}
            </button>
          ) : (
            <>
              <button type="button" className={styles.yes} disabled={busy} onClick={onHandOver}>
                {words.same(build.name)}
              </button>
              <button type="button" className={styles.other} onClick={() => setStep('differs')}>
                {words.notSame}
              </button>
            </>
          )}
        </div>
      )}
      <div className={styles.ways}>
        <button type="button" className={styles.back} onClick={onBack}>
          {words.back}
        </button>
        {build.alike && (
          <button type="button" className={styles.back} onClick={onNotSure}>
            {words.notSure}
          </button>
        )}
      </div>
    </section>
  )
}
