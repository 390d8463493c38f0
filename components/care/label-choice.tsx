import { useState } from 'react'
import styles from '#components/care/label-choice.module.css'
import { useLabelWords } from '#components/care/label-words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
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
      <Field
        label={`${words.findTitle} ${words.search}`}
        type="search"
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
      />
      {groups.length === 0 && <p>{words.nothingFound}</p>}
      <ul className={styles.groups}>
        {groups.map(({ component, name, ingredients }) => (
          <li key={component}>
            <h3>{name}</h3>
            <ul>
              {ingredients.map((one) => (
                <li key={one.id}>
                  <Button
                    data-read={one.readOn !== null}
                    sub={[
                      ...(one.through.length > 0 ? [words.through(one.through)] : []),
                      words.lastRead(one.readOn),
                    ].join(' · ')}
                    onClick={() => onChoose(one.id)}
                  >
                    {one.name}
                  </Button>
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
    </section>
  )
}
