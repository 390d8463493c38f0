import { useState } from 'react'
import styles from '#components/hand-over/mixed-up.module.css'
import panel from '#components/hand-over/panels.module.css'
import { type HandOverWords, useHandOverWords } from '#components/hand-over/words.tsx'
import { Connection } from '#components/live/connection.tsx'
import type { MayBeMixedUp, MixedUpView } from '#lib/rooms/shelf/views/mixed-up.ts'
import { sayBuild } from '#lib/service/tickets.ts'

const noteOf = (words: HandOverWords, { isHeld, isKeptApart }: MayBeMixedUp): string =>
  [...(isHeld ? [words.isHeld] : []), ...(isKeptApart ? [words.isKeptApart] : [])].join(', ')

/** Nobody knows which is which: what looks alike is lit, a tap adds or clears one, one button ends it. */
export function MixedUpPanel({
  picked,
  view,
  busy,
  onThrowOut,
  onBack,
}: {
  readonly picked: string
  readonly view: MixedUpView
  readonly busy: boolean
  readonly onThrowOut: (builds: readonly MayBeMixedUp[]) => void
  readonly onBack: () => void
}) {
  const words = useHandOverWords()
  const [named, setNamed] = useState(() =>
    view.builds.filter(({ isAlike }) => isAlike).map(({ name }) => name),
  )
  const lit = view.builds.filter(({ name }) => named.includes(name))
  const names = lit.map(({ name }) => name)
  const turn = (name: string) =>
    setNamed(named.includes(name) ? names.filter((one) => one !== name) : [...names, name])
  return (
    <section className={panel.panel} aria-labelledby="mixed-up-title">
      <h1 id="mixed-up-title" className={panel.title}>
        {words.mixedUp(picked)}
      </h1>
      <div className={panel.link}>
        <Connection />
      </div>
      <p className={panel.alone}>{words.mixedUpHint}</p>
      <ul className={styles.builds} aria-label={words.mixedUp(picked)}>
        {view.builds.map((one) => (
          <li key={one.name}>
            <button
              type="button"
              className={styles.build}
              aria-pressed={names.includes(one.name)}
              onClick={() => turn(one.name)}
            >
              <b>{sayBuild(one.name)}</b>
              <span>{one.item}</span>
              {noteOf(words, one) !== '' && (
                <span className={styles.note}>{noteOf(words, one)}</span>
              )}
              <span className={styles.goes}>
                {names.includes(one.name) ? words.goesOut : words.stays}
              </span>
            </button>
          </li>
        ))}
      </ul>
      {view.past.length > 0 && <p className={panel.alone}>{words.pastAlike(view.past)}</p>}
      <div className={panel.choices}>
        <button
          type="button"
          className={`${panel.danger} ${styles.out}`}
          disabled={busy || lit.length < 2}
          onClick={() => onThrowOut(lit)}
        >
          {lit.length < 2 ? words.nameTwo : words.throwOutMixedUp(names)}
        </button>
      </div>
      <button type="button" className={panel.back} onClick={onBack}>
        {words.back}
      </button>
    </section>
  )
}
