import { useState } from 'react'
import styles from '#components/hand-over/mixed-up.module.css'
import { type HandOverWords, useHandOverWords } from '#components/hand-over/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Panel } from '#components/ui/panel.tsx'
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
    <Panel
      title={words.mixedUp(picked)}
      label={words.mixedUp(picked)}
      back={words.back}
      onBack={onBack}
    >
      <p className={styles.hint}>{words.mixedUpHint}</p>
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
      {view.past.length > 0 && <p className={styles.hint}>{words.pastAlike(view.past)}</p>}
      <Button
        kind="no"
        size="large"
        disabled={busy}
        lacks={lit.length < 2 ? words.nameTwo : null}
        onClick={() => onThrowOut(lit)}
      >
        {words.throwOutMixedUp(names)}
      </Button>
    </Panel>
  )
}
