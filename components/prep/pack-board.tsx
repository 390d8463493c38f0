import { type ReactNode, useState } from 'react'
import { Line } from '#components/line/line.tsx'
import { useActing } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import styles from '#components/prep/pack.module.css'
import { usePrepWords } from '#components/prep/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { InitialsField } from '#components/ui/initials-field.tsx'
import { PACK_GROUPS, type PackItem } from '#lib/rooms/prep/facts/pack-list.ts'
import { isPacked, packOf } from '#lib/rooms/prep/facts/pack-now.ts'
import type { RunningState } from '#lib/service/state.ts'
import { pansOf } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { Pan } from '#lib/station/station-document.ts'

/** The sign that something is packed: drawn, beside its word. */
function Tick() {
  return (
    <svg className={styles.tick} viewBox="0 0 24 24" aria-hidden="true">
      <rect x="2" y="2" width="20" height="20" rx="4" />
      <path d="M6 12.5 10.5 17 18.5 7.5" />
    </svg>
  )
}

type BackUp = Extract<PackItem, { readonly what: 'back-up' }>

const isBackUp = (item: PackItem): item is BackUp => item.what === 'back-up'

/** A thing to pack: tapped once it is. */
function Packed({
  state,
  item,
  turn,
  className,
  children,
}: {
  readonly state: RunningState
  readonly item: PackItem
  readonly turn: (item: PackItem) => void
  readonly className: string
  readonly children: ReactNode
}) {
  const { pack } = usePrepWords()
  const isRow = item.what !== 'pan' && item.what !== 'back-up'
  return (
    <button
      type="button"
      className={className}
      aria-pressed={isPacked(state, item.id)}
      aria-label={isRow ? undefined : pack.thing(item, nameIn(state.station))}
      onClick={() => turn(item)}
    >
      {children}
      <Tick />
    </button>
  )
}

/** The line with its pans to pack, and below it all else that goes to the counter; ticks are live on every tablet. */
export function PackBoard({
  state,
  there,
  onBack,
}: {
  readonly state: RunningState
  /** Initials that are one tap. */
  readonly there: readonly string[]
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
  /** A back-up stands behind the first pan of its food; what has none on the line is a row. */
  const behind = (pan: Pan) =>
    pansOf(station).find(({ component }) => component === pan.component)?.id === pan.id
      ? items.filter(isBackUp).filter(({ component }) => component === pan.component)
      : []
  const drawn = new Set(pansOf(station).flatMap((pan) => behind(pan).map(({ id }) => id)))
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
        <InitialsField
          label={words.initials}
          others={words.otherInitials}
          value={initials}
          onChange={setInitials}
          {...{ there }}
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
          renderPan={(pan, component) => (
            <div className={styles.place}>
              {items
                .filter(({ id }) => id === `pack-pan.${pan.id}`)
                .map((item) => (
                  <Packed key={item.id} {...{ state, item, turn }} className={styles.pan ?? ''}>
                    <b>
                      {component.short.map((part) => (
                        <span key={part}>{part}</span>
                      ))}
                    </b>
                    <span>{pack.panShort(pan.size, pan.depthIn)}</span>
                  </Packed>
                ))}
              {behind(pan).map((item) => (
                <Packed key={item.id} {...{ state, item, turn }} className={styles.behind ?? ''}>
                  <b>{pack.behind}</b>
                  <span>{pack.behindShort(item)}</span>
                </Packed>
              ))}
            </div>
          )}
        />
      </div>
      {PACK_GROUPS.filter((group) => group !== 'pans').map((group) => {
        const own = items.filter((one) => one.group === group && !drawn.has(one.id))
        return own.length === 0 ? null : (
          <section key={group} className={styles.group} aria-label={pack.groups[group]}>
            <h2>{pack.groups[group]}</h2>
            <ul>
              {own.map((item) => (
                <li key={item.id}>
                  <Packed {...{ state, item, turn }} className={styles.row ?? ''}>
                    <b>{item.count}</b>
                    <span>{pack.thing(item, name)}</span>
                  </Packed>
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
