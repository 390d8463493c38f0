import shared from '#components/counter/counter.module.css'
import { NeedSign } from '#components/counter/need-sign.tsx'
import styles from '#components/counter/turned.module.css'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { useCounterWords } from '#components/counter/words.tsx'
import { useWords } from '#components/live/words.tsx'
import { tellFinding } from '#lib/needs/finding-told.ts'
import type { Settled } from '#lib/rooms/orders/facts/draft.ts'
import { nextStep } from '#lib/rooms/orders/views/next-step.ts'
import { settleAll } from '#lib/rooms/orders/views/ordering.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface TurnedStepProps {
  readonly state: RunningState
  readonly desk: OrderingDesk
}

/** Upside down for the student, so that the guest reads it across the counter: signs and words. */
export function TurnedStep({ state, desk: { ordering, tap } }: TurnedStepProps) {
  const words = useCounterWords()
  const live = useWords()
  const settled = settleAll(ordering, state)[ordering.current]?.settled
  if (!settled) return null
  const next = nextStep(ordering, state)
  const mayAgree = next.step === 'turn' && next.index === ordering.current
  return (
    <section className={styles.step} aria-labelledby="turned">
      <div className={styles.turned}>
        <h2 id="turned" className={styles.title} tabIndex={-1} data-step="">
          {words.turned.title}
        </h2>
        {state.station.invented && <p className={styles.invented}>{live.invented}</p>}
        <div className={styles.both} data-many={isMany(settled) || undefined}>
          <Told settled={settled} />
          <Food state={state} settled={settled} />
        </div>
        <Cautions state={state} settled={settled} />
        <div className={styles.ways}>
          <button type="button" className={shared.button} onClick={() => tap({ act: 'back' })}>
            {mayAgree ? words.turned.notRight : words.turned.back}
          </button>
          {mayAgree && (
            <button type="button" className={shared.main} onClick={() => tap({ act: 'agree' })}>
              {words.turned.agree}
            </button>
          )}
        </div>
      </div>
      <p className={styles.student}>{words.turned.across}</p>
    </section>
  )
}

/** Signs that take the whole width, each smaller. */
const isMany = ({ choice }: Settled): boolean => choice.needs.length > 4

function Told({ settled }: { readonly settled: Settled }) {
  const words = useCounterWords()
  const { needs } = settled.choice
  return (
    <div>
      <h3>{words.turned.needs}</h3>
      {needs.length === 0 && <p>{words.turned.none}</p>}
      <ul className={styles.signs} data-many={isMany(settled) || undefined}>
        {needs.map(({ code, handling }) => (
          <li key={code} data-handling={handling}>
            <NeedSign code={code} />
            <strong>{words.turned.need(code, handling)}</strong>
          </li>
        ))}
      </ul>
    </div>
  )
}

function Food({ state, settled }: { readonly state: RunningState; readonly settled: Settled }) {
  const words = useCounterWords()
  const name = nameIn(state.station)
  const { item, base, parts } = settled
  const has = [
    ...(base?.component ? [name(base.component)] : []),
    ...parts
      .filter(({ placement }) => placement !== 'no')
      .map(({ part, placement, portions }) => {
        const said = name(part.component)
        if (placement === 'side') return words.turned.onTheSide(said)
        return portions > 1 ? words.turned.portions(said, portions) : said
      }),
  ]
  const without = parts
    .filter(({ part, placement }) => placement === 'no' && part.usual !== 'no')
    .map(({ part }) => name(part.component))
  return (
    <div className={styles.food}>
      <h3>{words.turned.food(item.name)}</h3>
      <div className={styles.lists}>
        <List title={words.turned.has} names={has} sign="M4 13l5 6L20 5" />
        {without.length > 0 && (
          <List title={words.turned.without} names={without} sign="M5 5l14 14M19 5L5 19" />
        )}
      </div>
    </div>
  )
}

function List({
  title,
  names,
  sign,
}: {
  readonly title: string
  readonly names: readonly string[]
  readonly sign: string
}) {
  return (
    <div>
      <h4>{title}</h4>
      <ul className={styles.names}>
        {names.map((name) => (
          <li key={name}>
            <svg viewBox="0 0 24 24" aria-hidden="true">
              <path d={sign} />
            </svg>
            {name}
          </li>
        ))}
      </ul>
    </div>
  )
}

function Cautions({ state, settled }: { readonly state: RunningState; readonly settled: Settled }) {
  const words = useCounterWords()
  const { toAccept, choice } = settled
  const isApart = choice.needs.some((one) => one.handling === 'keep-apart')
  if (toAccept.length === 0 && !isApart) return null
  return (
    <div className={styles.cautions}>
      <svg className={styles.care} viewBox="0 0 24 24" aria-hidden="true">
        <path d="M12 2.5 22.5 21h-21Z" />
        <path d="M12 9v6M12 17.6v.4" />
      </svg>
      <div>
        <h3>{words.turned.cautions}</h3>
        {toAccept.map((one) => {
          const text = words.sayFinding(tellFinding(state.station, one))
          return <p key={`${text} ${one.need}`}>{text}.</p>
        })}
        {choice.caution !== null && <p>{words.turned.accepted}</p>}
        {isApart && <p>{words.turned.shared}</p>}
      </div>
    </div>
  )
}
