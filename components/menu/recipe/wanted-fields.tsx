import styles from '#components/menu/recipe/recipe.module.css'
import type { RecipeNow } from '#components/menu/recipe/use-recipe.ts'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import { Field } from '#components/ui/field.tsx'
import { vesselsOf } from '#lib/editor/cards/card-box.ts'
import type { Card } from '#lib/recipes/card.ts'
import type { Asked, RecipeSheet } from '#lib/recipes/sheet/recipe-sheet.ts'

interface WantedFieldsProps {
  readonly now: RecipeNow
  readonly card: Card
  readonly asked: Asked
  readonly sheet: RecipeSheet
  readonly onAsk: (asked: Asked) => void
}

/** What it is made in, by the kitchen's list or as typed, and into how many batches that makes it. */
function MadeIn({ now, card, asked, sheet, onAsk }: WantedFieldsProps) {
  const words = useRecipeWords()
  const { fits } = sheet
  const problem = fits && !fits.ok ? words.problem({ at: '', ...fits }) : null
  const vessels = vesselsOf(now.draft)
  const choose = (id: string) => {
    onAsk({ ...asked, fits: '' })
    void now.put('recipe', card.id, id === '' ? {} : { vessel: id }, id === '' ? ['vessel'] : [])
  }
  return (
    <div className={styles.hand}>
      {vessels.length > 0 && (
        <label>
          <span>{words.vessel}</span>
          <select value={now.vessel?.id ?? ''} onChange={({ target }) => choose(target.value)}>
            <option value="">{words.noVessel}</option>
            {vessels.map(({ id, name, holds }) => (
              <option key={id} value={id}>
                {words.vesselWith(name, holds)}
              </option>
            ))}
          </select>
        </label>
      )}
      {now.vessel === null ? (
        <Field
          label={words.fits}
          placeholder={words.fitsHint}
          maxLength={60}
          value={asked.fits}
          problem={problem}
          onChange={({ target }) => onAsk({ ...asked, fits: target.value })}
        />
      ) : (
        problem !== null && (
          <p role="alert" className={styles.wrong}>
            {problem}
          </p>
        )
      )}
    </div>
  )
}

/** How much of it: by portions, an amount, pans or times, or by what is at hand of one line. */
export function WantedFields(props: WantedFieldsProps) {
  const { now, card, asked, sheet, onAsk } = props
  const words = useRecipeWords()
  const { wanted, fits, notInStep } = sheet
  const { box } = now
  const isByHand = asked.handOf !== null
  const problem = wanted.ok ? null : words.problem(wanted)
  const nameOf = (of: string) => box.cards.get(of)?.name ?? box.bought.get(of)?.name ?? of
  return (
    <section className={styles.wanted}>
      <Field
        label={words.make}
        placeholder={words.makeHint}
        maxLength={60}
        value={asked.make}
        problem={isByHand ? null : problem}
        onChange={({ target }) => onAsk({ ...asked, make: target.value, handOf: null, hand: '' })}
      />
      <div className={styles.hand}>
        <label>
          <span>{words.atHand}</span>
          <select
            value={asked.handOf ?? ''}
            onChange={({ target }) =>
              onAsk({ ...asked, handOf: target.value === '' ? null : Number(target.value) })
            }
          >
            <option value="">{words.nothing}</option>
            {card.lines.map((line, at) => (
              <option key={`${line.of} ${line.typed}`} value={at}>
                {nameOf(line.of)}
              </option>
            ))}
          </select>
        </label>
        {isByHand && (
          <Field
            label={words.handAmount}
            placeholder="3 lb"
            maxLength={60}
            value={asked.hand}
            problem={problem}
            onChange={({ target }) => onAsk({ ...asked, hand: target.value })}
          />
        )}
      </div>
      <MadeIn {...props} />
      <p role="status" className={styles.factor}>
        <b>{words.factor(sheet.factor)}</b>
        {fits?.ok && <span>{words.batches(fits.count, words.amountOf(fits.each))}</span>}
        {notInStep.map((flag) => (
          <span key={flag.code} data-mind="">
            {words.notInStep(flag)}
          </span>
        ))}
      </p>
    </section>
  )
}
