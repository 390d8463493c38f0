import { useState } from 'react'
import styles from '#components/menu/recipe/recipe.module.css'
import type { RecipeNow } from '#components/menu/recipe/use-recipe.ts'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { recordsIn, rowOf } from '#lib/editor/draft.ts'
import type { Card } from '#lib/recipes/card.ts'
import { invoiceTyped, percentTyped, UNTYPED } from '#lib/recipes/invoice-typed.ts'

/** A line of an invoice for one of the card's ingredients, and how much of it is eaten. */
export function InvoiceForm({ now, card }: { readonly now: RecipeNow; readonly card: Card }) {
  const words = useRecipeWords()
  const bought = card.lines.filter(({ isRecipe }) => !isRecipe).map(({ of }) => of)
  const [chosen, setChosen] = useState('')
  const [typed, setTyped] = useState(UNTYPED)
  const [edible, setEdible] = useState<string | null>(null)
  const [said, setSaid] = useState('')
  const of = bought.includes(chosen) ? chosen : (bought[0] ?? '')
  const row = rowOf(now.draft, 'ingredient', of)
  if (row === undefined) return null
  const read = invoiceTyped(typed, now.today)
  const kept = now.box.bought.get(of)?.ediblePercent ?? null
  const percent = percentTyped(edible ?? String(kept ?? ''))
  const set = (field: keyof typeof UNTYPED) => (value: string) => {
    setSaid('')
    setTyped({ ...typed, [field]: value })
  }
  const add = async () => {
    if (!read.ok) return
    const { date, packs, packTyped, cents } = read.invoice
    const invoices = [...recordsIn(row, 'invoices'), { date, packs, packTyped, cents }]
    const isTaken = await now.put('ingredient', of, { invoices: invoices.slice(-MOST_LINES) })
    if (isTaken) setTyped({ ...UNTYPED, date: typed.date })
    setSaid(isTaken ? words.kept : words.notKept)
  }
  const saveEdible = async () => {
    if (!percent.ok || edible === null) return
    const isTaken =
      percent.percent === null
        ? await now.put('ingredient', of, {}, ['edible'])
        : await now.put('ingredient', of, { edible: percent.percent })
    if (isTaken) setEdible(null)
    setSaid(isTaken ? words.kept : words.notKept)
  }
  const isBegun = typed.packs + typed.packTyped + typed.paid !== ''
  return (
    <form
      className={styles.invoice}
      aria-label={words.invoice}
      onSubmit={(event) => {
        event.preventDefault()
        void add()
      }}
    >
      <h3>{words.invoice}</h3>
      <label>
        <span>{words.which}</span>
        <select
          value={of}
          onChange={({ target }) => {
            setChosen(target.value)
            setEdible(null)
          }}
        >
          {bought.map((id) => (
            <option key={id} value={id}>
              {now.box.bought.get(id)?.name ?? id}
            </option>
          ))}
        </select>
      </label>
      <Field
        label={words.edible}
        inputMode="numeric"
        placeholder={words.edibleWhy}
        value={edible ?? String(kept ?? '')}
        problem={percent.ok ? null : words.wrongPercent}
        onChange={({ target }) => setEdible(target.value)}
        onBlur={() => void saveEdible()}
      />
      <Field
        label={words.date}
        type="date"
        value={typed.date}
        max={now.today}
        problem={!read.ok && read.code === 'later' ? words.wrongDate : null}
        onChange={({ target }) => set('date')(target.value)}
      />
      <Field
        label={words.packs}
        inputMode="numeric"
        value={typed.packs}
        problem={!read.ok && read.field === 'packs' && isBegun ? words.wrongPacks : null}
        onChange={({ target }) => set('packs')(target.value)}
      />
      <Field
        label={words.packHolds}
        placeholder={words.packHint}
        maxLength={60}
        value={typed.packTyped}
        problem={
          !read.ok && read.field === 'packTyped' && typed.packTyped !== ''
            ? words.problem(read)
            : null
        }
        onChange={({ target }) => set('packTyped')(target.value)}
      />
      <Field
        label={words.paid}
        inputMode="decimal"
        value={typed.paid}
        problem={!read.ok && read.field === 'paid' && typed.paid !== '' ? words.wrongMoney : null}
        onChange={({ target }) => set('paid')(target.value)}
      />
      <Button type="submit" disabled={!read.ok}>
        {words.add}
      </Button>
      <p role="status">{said}</p>
    </form>
  )
}

/** As many as the document takes of one ingredient; the oldest go first. */
const MOST_LINES = 24
