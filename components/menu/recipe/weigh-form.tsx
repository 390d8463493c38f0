import { useState } from 'react'
import styles from '#components/menu/recipe/recipe.module.css'
import type { RecipeNow } from '#components/menu/recipe/use-recipe.ts'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import type { ServedAs } from '#lib/editor/cards/served-as.ts'
import { weighed, weighedFields } from '#lib/editor/cards/weighed.ts'
import type { Weighing } from '#lib/recipes/density.ts'
import { FOOD_WEIGHTS } from '#lib/recipes/food-weights.ts'

const WAYS = ['measured', 'pan', 'table'] as const

/** What it weighs: ten level scoops, one full pan, or a table. */
export function WeighForm({ now, served }: { readonly now: RecipeNow; readonly served: ServedAs }) {
  const words = useRecipeWords()
  const [by, setBy] = useState<Weighing['by']>('measured')
  const [typed, setTyped] = useState({ scoops: '', gross: '', tare: '', food: '' })
  const [said, setSaid] = useState('')
  const weighing: Weighing = { by, ...typed }
  const read = weighed(now.draft, served, weighing)
  const isBegun = typed.scoops + typed.gross + typed.food !== ''
  const type = (field: keyof typeof typed) => (value: string) => {
    setSaid('')
    setTyped({ scoops: '', gross: '', tare: typed.tare, food: '', [field]: value })
  }
  const record = async () => {
    if (!read.ok) return
    const fields = weighedFields(now.draft, served.component, read, words.weighedBy(weighing))
    setSaid((await now.put('component', served.component, fields)) ? words.kept : words.notKept)
  }
  return (
    <form
      className={styles.invoice}
      aria-label={words.weighs(served.name)}
      onSubmit={(event) => {
        event.preventDefault()
        void record()
      }}
    >
      <h3>{words.weighs(served.name)}</h3>
      <label>
        <span>{words.knownBy}</span>
        <select
          value={by}
          onChange={({ target }) => setBy(WAYS.find((one) => one === target.value) ?? 'measured')}
        >
          {WAYS.map((way) => (
            <option key={way} value={way}>
              {words.weighing[way]}
            </option>
          ))}
        </select>
      </label>
      {by === 'measured' && (
        <Field
          label={words.tenWeigh(served.scoop)}
          placeholder="1 lb 4 oz"
          maxLength={40}
          value={typed.scoops}
          onChange={({ target }) => type('scoops')(target.value)}
        />
      )}
      {by === 'pan' && (
        <>
          <Field
            label={words.panGross}
            placeholder="12 lb"
            maxLength={40}
            value={typed.gross}
            onChange={({ target }) => setTyped({ ...typed, gross: target.value })}
          />
          <Field
            label={words.panTare}
            placeholder={words.panTareHint}
            maxLength={40}
            value={typed.tare}
            onChange={({ target }) => setTyped({ ...typed, tare: target.value })}
          />
        </>
      )}
      {by === 'table' && (
        <label>
          <span>{words.tableOf}</span>
          <select value={typed.food} onChange={({ target }) => type('food')(target.value)}>
            <option value="">{words.nothing}</option>
            {FOOD_WEIGHTS.map(({ id }) => (
              <option key={id} value={id}>
                {words.foodName(id)}
              </option>
            ))}
          </select>
        </label>
      )}
      <p role="status">
        {said !== ''
          ? said
          : read.ok
            ? words.weighedAs(read.gPerCup, read.density.by, read.density.offBy)
            : isBegun
              ? words.notWeighed[read.code]
              : ''}
      </p>
      <Button type="submit" disabled={!read.ok}>
        {words.record}
      </Button>
    </form>
  )
}
