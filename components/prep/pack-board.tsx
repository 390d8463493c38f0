import { useState } from 'react'
import { Line } from '#components/line/line.tsx'
import { useActing } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import styles from '#components/prep/pack.module.css'
import { usePrepWords } from '#components/prep/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { PACK_GROUPS, type PackItem } from '#lib/rooms/prep/facts/pack-list.ts'
import { isPacked, packOf } from '#lib/rooms/prep/facts/pack-now.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** The sign that something is packed: drawn, beside its word. */
function Tick() {
  return (
    <svg className={styles.tick} viewBox="0 0 24 24" aria-hidden="true">
      <rect x="2" y="2" width="20" height="20" rx="4" />
      <path d="M6 12.5 10.5 17 18.5 7.5" />
    </svg>
  )
}

/** The line with its pans to pack, and below it all else that goes to the counter; ticks are live on every tablet. */
export function PackBoard({
  state,
  onBack,
}: {
  readonly state: RunningState
  readonly onBack: () => void
}) {
  const words = usePrepWords()
  const { pack } = words
  const acting = useActing(words.loadRefusals)
  const [initials, setInitials] = useState('')
  const { station } = state
  const items = packOf(state) ?? []
  const name = nameIn(station)
  const done = items.filter(({ id }) => isPacked(state, id)).length
  const turn = ({ id }: PackItem) => {
    if (isPacked(state, id)) void acting.act({ type: 'takeBackTick', task: id }, pack.notPacked)
    else if (initials.trim() === '') acting.say({ kind: 'refused', text: words.lacksInitials })
    else void acting.act({ type: 'tickTask', task: id, initials }, pack.isPacked)
  }
  return (
    <main className={styles.board}>
      <header className={styles.header}>
        <h1>{pack.title}</h1>
        <p>
          <b>{pack.packed(done, items.length)}</b>
        </p>
        <Field
          label={words.initials}
          maxLength={6}
          value={initials}
          onChange={(event) => setInitials(event.target.value)}
        />
        <p role="status" data-kind={acting.said?.kind ?? 'none'} className={styles.said}>
          {acting.said?.text ?? ''}
        </p>
        <Button kind="quiet" onClick={onBack}>
          {pack.toTasks}
        </Button>
      </header>
      <div className={styles.line}>
        <Line
          station={station}
          label={pack.groups.pans}
          wrap="by-well"
          renderPan={(pan, component) => {
            const item = items.find(({ id }) => id === `pack-pan.${pan.id}`)
            return (
              <button
                type="button"
                className={styles.pan}
                aria-pressed={item !== undefined && isPacked(state, item.id)}
                aria-label={item ? pack.thing(item, name) : component.name}
                onClick={() => item && turn(item)}
              >
                <b>
                  {component.short.map((part) => (
                    <span key={part}>{part}</span>
                  ))}
                </b>
                <span>{pack.panShort(pan.size, pan.depthIn)}</span>
                <Tick />
              </button>
            )
          }}
        />
      </div>
      {PACK_GROUPS.filter((group) => group !== 'pans').map((group) => {
        const own = items.filter((one) => one.group === group)
        return own.length === 0 ? null : (
          <section key={group} className={styles.group} aria-label={pack.groups[group]}>
            <h2>{pack.groups[group]}</h2>
            <ul>
              {own.map((item) => (
                <li key={item.id}>
                  <button
                    type="button"
                    className={styles.row}
                    aria-pressed={isPacked(state, item.id)}
                    onClick={() => turn(item)}
                  >
                    <b>{item.count}</b>
                    <span>{pack.thing(item, name)}</span>
                    <Tick />
                  </button>
                </li>
              ))}
            </ul>
          </section>
        )
      })}
      <Connection />
    </main>
  )
}
