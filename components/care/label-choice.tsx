import { useState } from 'react'
import styles from '#components/care/label-choice.module.css'
import { useLabelWords } from '#components/care/label-words.tsx'
import { findLabels, labelGroups } from '#lib/rooms/care/views/labels.ts'
import type { RunningState } from '#lib/service/state.ts'

interface LabelChoiceProps {
  readonly state: RunningState
  readonly onChoose: (ingredient: string) => void
}

/** Every food by what it goes into, in the order of the line; fewer with each letter typed. */
export function LabelChoice({ state, onChoose }: LabelChoiceProps) {
  const words = useLabelWords()
  const [typed, setTyped] = useState('')
  const groups = findLabels(labelGroups(state.station), typed)
  return (
    <section className={styles.choice} aria-label={words.findTitle}>
      <label className={styles.search}>
        <span>
          <b>{words.findTitle}</b> {words.search}
        </span>
        <input
          type="search"
          autoComplete="off"
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
      </label>
      {groups.length === 0 && <p>{words.nothingFound}</p>}
      <ul className={styles.groups}>
        {groups.map(({ component, name, ingredients }) => (
          <li key={component}>
            <h3>{name}</h3>
            <ul>
              {ingredients.map((one) => (
                <li key={one.id}>
                  <button
                    type="button"
                    data-read={one.readOn !== null}
                    onClick={() => onChoose(one.id)}
                  >
                    <b>{one.name}</b>
                    <span>
                      {one.through.length > 0 && `${words.through(one.through)} · `}
                      <em>{words.lastRead(one.readOn)}</em>
                    </span>
                  </button>
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
    </section>
  )
}
