import { useState } from 'react'
import { MadeAndTaken } from '#components/menu/recipe/made-and-taken.tsx'
import styles from '#components/menu/recipe/recipe.module.css'
import type { RecipeNow } from '#components/menu/recipe/use-recipe.ts'
import { WeighForm } from '#components/menu/recipe/weigh-form.tsx'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { portionSteps } from '#lib/editor/cards/pan-holds.ts'
import { isRecord, rowOf } from '#lib/editor/draft.ts'
import { portionTotal } from '#lib/recipes/portion-total.ts'
import { toNumber } from '#lib/recipes/rational.ts'
import type { Asked, Checked, RecipeSheet } from '#lib/recipes/sheet/recipe-sheet.ts'
import type { WayOut } from '#lib/recipes/sheet/ways-out.ts'

type Unknown = Exclude<Checked, { readonly code: 'checked' }>['code']
type Told = Extract<Checked, { readonly code: 'checked' }>

interface EnoughPanelProps {
  readonly now: RecipeNow
  readonly sheet: RecipeSheet
  readonly asked: Asked
  readonly onAsk: (asked: Asked) => void
}

/** What can be done about it, each in one tap: the portions that it was held against stay. */
function Ways({
  now,
  told,
  asked,
  onAsk,
  onSaid,
}: Omit<EnoughPanelProps, 'sheet'> & {
  readonly told: Told
  readonly onSaid: (said: string) => void
}) {
  const words = useRecipeWords()
  const { way: said } = words
  const count = String(Math.round(toNumber(told.portions)))
  const scoop = async (number: number) => {
    const component = now.served?.component ?? ''
    const portion = rowOf(now.draft, 'component', component)?.portion
    if (!isRecord(portion)) return
    const isTaken = await now.take(portionSteps(now.draft, component, { ...portion, number }))
    if (isTaken) onAsk({ ...asked, portions: count })
    onSaid(isTaken ? words.scoopTaken(number) : words.notKept)
  }
  const make = (typed: string) => {
    onSaid('')
    onAsk({ ...asked, make: typed, handOf: null, hand: '', portions: count })
  }
  const of = (way: WayOut) => {
    switch (way.kind) {
      case 'scoop':
        return (
          <Button
            key={way.kind}
            sub={said.scoopSub(way.portions)}
            onClick={() => void scoop(way.number)}
          >
            {said.scoop(way.number)}
          </Button>
        )
      case 'enough':
        return (
          <Button key={way.kind} sub={said.enoughSub} onClick={() => make(way.typed)}>
            {said.enough(way.factor)}
          </Button>
        )
      case 'batches':
        return (
          <Button key={way.kind} sub={said.batchesSub(way.count)} onClick={() => make(way.typed)}>
            {said.batches(way.count)}
          </Button>
        )
    }
  }
  return <div className={styles.ways}>{told.ways.map(of)}</div>
}

/** What is made against portions × scoops, and the ways out. */
export function EnoughPanel(props: EnoughPanelProps) {
  const { now, sheet, asked, onAsk } = props
  const words = useRecipeWords()
  const [said, setSaid] = useState('')
  const { served } = now
  const { checked } = sheet
  const why: Readonly<Record<Unknown, string>> = {
    'not-served': words.notServed,
    'no-portion': words.noPortion,
    'no-size': words.noSize,
    'no-density': words.noDensity,
    'no-yield': words.noYieldYet,
    'under-one': words.underOne,
    'no-count': words.notCount,
  }
  const told = checked.code === 'checked' ? checked : null
  const isAsking = told !== null || checked.code === 'under-one' || checked.code === 'no-count'
  return (
    <section className={styles.enough} aria-label={words.yield}>
      <h2>{words.yield}</h2>
      {isAsking && (
        <Field
          label={words.forHowMany}
          inputMode="numeric"
          maxLength={5}
          placeholder={told ? words.forHint(Math.round(toNumber(told.portions))) : ''}
          side={told && told.by !== 'asked' ? <span>{words.wantedBy[told.by]}</span> : undefined}
          value={asked.portions}
          problem={checked.code === 'no-count' ? words.notCount : null}
          onChange={({ target }) => {
            setSaid('')
            onAsk({ ...asked, portions: target.value })
          }}
        />
      )}
      {checked.code !== 'checked' && checked.code !== 'no-count' && <p>{why[checked.code]}</p>}
      {checked.code === 'no-density' && served && <WeighForm now={now} served={served} />}
      {told && (
        <>
          <MadeAndTaken
            over={told.check.over}
            noted={told.check.noted}
            makes={
              told.byBatches
                ? words.measured.makes(words.amountOf(told.made), told.check.gives)
                : words.makes(words.amountOf(told.made), told.check.gives)
            }
            takes={words.portionTotal(
              served?.scoop ?? null,
              served?.level ?? 1,
              portionTotal(told.portion, told.portions),
            )}
          />
          <p role="status" data-noted={told.check.noted || undefined}>
            {told.check.noted
              ? words.offBy(told.check.over, Math.round(toNumber(told.portions)))
              : words.fitsIt}{' '}
            {said}
          </p>
          {told.byBatches && (
            <p>
              {words.measured.byBatches(told.byBatches)} {words.measured.byCard}
            </p>
          )}
          {told.check.noted && <Ways {...{ now, told, asked, onAsk }} onSaid={setSaid} />}
          {served?.density && told.made.kind !== told.portion.kind && (
            <p>{words.density(served.density.by, served.density.offBy)}</p>
          )}
        </>
      )}
    </section>
  )
}
