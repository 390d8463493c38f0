import { useState } from 'react'
import { About } from '#components/menu/fields/help.tsx'
import { measuredDensity, tableRows } from '#components/menu/pan/density-now.ts'
import styles from '#components/menu/pan/portion.module.css'
import { toolOf } from '#components/menu/pan/portion-now.ts'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Field } from '#components/ui/field.tsx'
import { isRecord, type Json, type Row, rowOf, textIn } from '#lib/editor/draft.ts'

/** What it weighs: from ten level measures that were weighed, or from a table with its source. */
export function DensityField({
  component,
  onAnswer,
}: {
  readonly component: string
  readonly onAnswer: (portion: Row, density: Json) => void
}) {
  const words = useMenuWords()
  const { draft } = useMenu()
  const row = rowOf(draft, 'component', component)
  const portion: Row = isRecord(row?.portion) ? row.portion : {}
  const density = isRecord(row?.density) ? row.density : undefined
  const [typing, setTyping] = useState<string | null>(null)
  const tool = toolOf(portion)
  const kept = textIn(density, 'by') === 'measured' ? textIn(density, 'typed') : ''
  const again = kept === '' ? null : measuredDensity(portion, kept)
  // Weighed with another tool than the portion's now, the text would say what nobody weighed.
  const text = typing ?? (again?.ok && again.gPerMl === density?.gPerMl ? kept : '')
  const read = text.trim() === '' ? null : measuredDensity(portion, text)
  const gPerCup = typeof portion.gPerCup === 'number' ? portion.gPerCup : null
  const weigh = (said: string) => {
    setTyping(said)
    const found = measuredDensity(portion, said)
    if (found.ok)
      onAnswer(
        { ...portion, gPerCup: found.gPerCup, source: words.pan.density.measured(said.trim()) },
        { gPerMl: found.gPerMl, by: 'measured', typed: said.trim() },
      )
  }
  const rows = tableRows(textIn(row, 'name'))
  return (
    <About of="density">
      <div className={styles.density}>
        <Field
          label={words.pan.density.ten(
            tool === 'scoop'
              ? words.pan.density.scoops
              : tool === 'measure'
                ? words.pan.density.cups
                : words.pan.density.ladles,
          )}
          placeholder={words.pan.density.tenHint}
          aria-description={words.help.density}
          maxLength={40}
          value={text}
          problem={
            read === null || read.ok
              ? null
              : read.code === 'unlikely'
                ? words.pan.density.unlikely
                : words.pan.density.wrong
          }
          onChange={({ target }) => weigh(target.value)}
        />
        {rows.length > 0 && (
          <fieldset className={styles.table}>
            <legend>{words.pan.density.table}</legend>
            {rows.map((one) => (
              <button
                key={one.id}
                type="button"
                aria-pressed={textIn(density, 'source') === words.foodSource(one)}
                onClick={() => {
                  setTyping(null)
                  onAnswer(
                    { ...portion, gPerCup: one.gPerCup, source: words.foodSource(one) },
                    { gPerMl: one.gPerMl, by: 'table', source: words.foodSource(one) },
                  )
                }}
              >
                {words.foodName(one.id)}
              </button>
            ))}
          </fieldset>
        )}
        <p>
          {gPerCup === null
            ? words.pan.density.unknown
            : words.pan.density.known(
                words.sayWeight(Math.round(gPerCup * 1000)),
                textIn(portion, 'source'),
              )}
        </p>
      </div>
    </About>
  )
}
