import styles from '#components/menu/recipe/recipe.module.css'
import type { RecipeNow } from '#components/menu/recipe/use-recipe.ts'
import { WeighForm } from '#components/menu/recipe/weigh-form.tsx'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import { Note } from '#components/ui/note.tsx'
import { toNumber } from '#lib/recipes/rational.ts'
import type { Checked, RecipeSheet } from '#lib/recipes/recipe-sheet.ts'

type Unknown = Exclude<Checked, { readonly code: 'checked' }>['code']

/** What is made against portions × scoops, and the ways out. */
export function EnoughPanel({
  now,
  sheet: { checked },
}: {
  readonly now: RecipeNow
  readonly sheet: RecipeSheet
}) {
  const words = useRecipeWords()
  const { served } = now
  const why: Readonly<Record<Unknown, string>> = {
    'not-served': words.notServed,
    'no-portion': words.noPortion,
    'no-size': words.noSize,
    'no-density': words.noDensity,
    'no-yield': words.noYieldYet,
    'not-asked': words.notAsked,
  }
  if (checked.code !== 'checked')
    return (
      <section className={styles.enough}>
        <h2>{words.yield}</h2>
        <p>{why[checked.code]}</p>
        {checked.code === 'no-density' && served && <WeighForm now={now} served={served} />}
      </section>
    )
  const { check, portion, made, portions } = checked
  const count = Math.round(toNumber(portions))
  const said = words.amountOf(portion)
  return (
    <section className={styles.enough}>
      <h2>{words.yield}</h2>
      <p>
        <b>
          {words.portionTimes(
            served?.scoop ?? null,
            served?.level ?? 1,
            said,
            count,
            words.amountOf(check.takes),
          )}
        </b>
      </p>
      <p>{words.makes(words.amountOf(made), check.gives)}</p>
      {check.noted ? (
        <Note kind="watch">
          {words.offBy(check.over, count)} {words.ways}{' '}
          {[
            words.makeInstead(check.factor),
            ...(check.scoop ? [words.scoopInstead(check.scoop.number, check.scoop.portions)] : []),
          ].join('; ')}
          .
        </Note>
      ) : (
        <p>{words.fitsIt}</p>
      )}
      {served?.density && made.kind !== portion.kind && (
        <p>{words.density(served.density.by, served.density.offBy)}</p>
      )}
    </section>
  )
}
