import { useState } from 'react'
import { Compare } from '#components/hand-over/compare.tsx'
import styles from '#components/hand-over/panel.module.css'
import { useFit } from '#components/hand-over/use-fit.ts'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { useSettled } from '#components/ui/settled.ts'
import type { OnShelf } from '#lib/rooms/shelf/views/hand-over.ts'
import { linesOfParts } from '#lib/service/mark.ts'
import { sayBuild } from '#lib/service/tickets.ts'

/** The mark shrinks by these before it would be cut; the last is the least. */
const MARK_SIZES = ['40', '30', '25'] as const

export interface GiveActs {
  readonly handOver: (build: OnShelf) => void
  readonly pay: (build: OnShelf) => void
  /** Pays, and hands over once that was taken. */
  readonly payAndGive: (build: OnShelf) => void
  readonly problem: (build: OnShelf) => void
  readonly notSure: (build: OnShelf) => void
  readonly setAsking: (isAsked: boolean) => void
}

type Step = 'mark' | 'ask' | 'compare' | 'differs' | 'pay'

/**
 * What is done to the picked parcel: its mark as it is written on the wrap, what is to be paid, and
 * one button. Of a kept-apart one the guest is asked first; what isn't paid is asked once.
 */
export function GivePanel({
  build,
  isPicked,
  guest,
  until,
  money,
  isGone,
  busy,
  acts,
}: {
  readonly build: OnShelf
  /** Somebody tapped it; else it is the oldest. */
  readonly isPicked: boolean
  readonly guest: string | null
  /** By when it is collected and thrown out, in words. */
  readonly until: string
  /** The ticket's sum, in words. */
  readonly money: string
  /** It was handed over a moment ago: the next one doesn't come under the same finger. */
  readonly isGone: boolean
  readonly busy: boolean
  readonly acts: GiveActs
}) {
  const words = useHandOverWords()
  const [step, setStep] = useState<Step>(isPicked && build.askFirst ? 'ask' : 'mark')
  const isSettled = useSettled(`${build.name} ${step}`)
  const lines = words.markLines(build.mark)
  const fit = useFit(MARK_SIZES, `${build.name} ${step} ${lines.join()}`)
  const name = sayBuild(build.name)
  const names = [
    build.name,
    ...build.siblings.filter(({ state }) => state !== 'cancelled').map((one) => one.name),
  ].sort()
  const go = (next: Step) => {
    acts.setAsking(next === 'ask' || next === 'compare' || next === 'differs')
    setStep(next)
  }
  const meant = (act: () => void) => () => {
    if (isSettled()) act()
  }
  const give = () => (build.asksToPay ? go('pay') : acts.handOver(build))
  const isAsked = step !== 'mark' && step !== 'pay'
  return (
    <section className={styles.panel} data-step={step} aria-label={words.panelOf(build.name)}>
      <div className={styles.who}>
        <h2 className={styles.number} data-figures={name.indexOf('-')}>
          {name}
        </h2>
        {!isAsked && (
          <p>
            {build.item} {guest !== null && <b>{guest}</b>}
          </p>
        )}
        {(step === 'compare' || step === 'differs') && build.alike && (
          <Button kind="quiet" onClick={() => acts.notSure(build)}>
            {words.notSure}
          </Button>
        )}
        {isAsked || step === 'pay' ? (
          <Button kind="quiet" onClick={() => go('mark')}>
            {words.back}
          </Button>
        ) : (
          <Button
            kind="quiet"
            aria-label={words.wrongOf(build.name)}
            onClick={() => acts.problem(build)}
          >
            {words.wrong}
          </Button>
        )}
      </div>
      <div className={styles.what} ref={fit} tabIndex={-1}>
        {step === 'ask' && (
          <div className={styles.ask}>
            <p>{words.alone}</p>
            <p className={styles.question}>“{words.question}”</p>
            <p>{words.listen}</p>
          </div>
        )}
        {(step === 'compare' || step === 'differs') && <Compare build={build} />}
        {step === 'pay' && <p className={styles.owed}>{words.notPaid(money, names)}</p>}
        {step === 'mark' &&
          (build.askFirst ? (
            <p className={styles.apart}>{words.askFirstHint}</p>
          ) : lines.length === 0 ? (
            <p className={styles.usual}>{words.asItComes}</p>
          ) : (
            <ul className={styles.mark}>
              {lines.map((line, at) => (
                <li key={line} data-need={at >= linesOfParts(build.mark)}>
                  {line}
                </li>
              ))}
            </ul>
          ))}
        {step === 'mark' && (
          <div className={styles.beside}>
            {build.alike && <p className={styles.alike}>{words.alike(build.alike.names)}</p>}
            {until !== '' && <p>{until}</p>}
          </div>
        )}
      </div>
      <div className={styles.do}>
        {step === 'mark' && (
          <div className={styles.money} data-paid={build.paid}>
            {build.paid ? (
              <b>{words.paid}</b>
            ) : (
              <>
                <p>
                  <b>{money}</b>
                  <span>{build.asksToPay ? words.toPayFor(names) : words.onListNow}</span>
                </p>
                <Button
                  aria-label={words.payOf(build.name)}
                  disabled={busy || isGone}
                  onClick={() => acts.pay(build)}
                >
                  {words.pay}
                </Button>
              </>
            )}
          </div>
        )}
        {step === 'mark' && (
          <Button
            kind={build.askFirst ? 'care' : 'main'}
            size="large"
            className={styles.main}
            disabled={busy}
            lacks={isGone ? words.isHandedOver(build.name) : null}
            onClick={meant(() => (build.askFirst ? go('ask') : give()))}
          >
            {build.askFirst ? words.askFirst(build.name) : words.handOver(build.name)}
          </Button>
        )}
        {step === 'ask' && (
          <Button
            kind="main"
            size="large"
            className={styles.main}
            onClick={meant(() => go('compare'))}
          >
            {words.answered}
          </Button>
        )}
        {step === 'compare' && (
          <>
            <Button
              kind="main"
              size="large"
              className={styles.main}
              disabled={busy}
              onClick={meant(give)}
            >
              {words.same(build.name)}
            </Button>
            <Button kind="no" onClick={() => go('differs')}>
              {words.notSame}
            </Button>
          </>
        )}
        {step === 'differs' && (
          <p className={styles.stays} role="alert">
            {words.notSameThen}
          </p>
        )}
        {step === 'pay' && (
          <>
            <Button
              kind="main"
              size="large"
              className={styles.main}
              disabled={busy}
              sub={words.handOver(build.name)}
              onClick={meant(() => acts.payAndGive(build))}
            >
              {words.paidAndGive}
            </Button>
            <Button
              size="large"
              disabled={busy}
              sub={words.laterThen}
              onClick={meant(() => acts.handOver(build))}
            >
              {words.payLater}
            </Button>
          </>
        )}
      </div>
    </section>
  )
}
