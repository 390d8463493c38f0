import styles from '#components/menu/recipe/recipe.module.css'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import { Field } from '#components/ui/field.tsx'
import type { Card, CardBox } from '#lib/recipes/card.ts'
import type { Asked, RecipeSheet } from '#lib/recipes/recipe-sheet.ts'

interface WantedFieldsProps {
  readonly card: Card
  readonly box: CardBox
  readonly asked: Asked
  readonly sheet: RecipeSheet
  readonly onAsk: (asked: Asked) => void
}

/** How much of it: by portions, an amount, pans or times, or by what is at hand of one line. */
export function WantedFields({ card, box, asked, sheet, onAsk }: WantedFieldsProps) {
  const words = useRecipeWords()
  const { wanted, fits } = sheet
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
      <Field
        label={words.fits}
        placeholder={words.fitsHint}
        maxLength={60}
        value={asked.fits}
        problem={fits && !fits.ok ? words.problem({ at: '', ...fits }) : null}
        onChange={({ target }) => onAsk({ ...asked, fits: target.value })}
      />
      <p role="status" className={styles.factor}>
        <b>{words.factor(sheet.factor)}</b>
        {fits?.ok && (
          <span>
            {words.batches(fits.count, words.amountOf(fits.each))} {fits.count > 1 && words.depth}
          </span>
        )}
      </p>
    </section>
  )
}
