import { useState } from 'react'
import page from '#components/access/page.module.css'
import styles from '#components/menu/recipe/recipe.module.css'
import type { RecipeNow } from '#components/menu/recipe/use-recipe.ts'
import type { CardYields } from '#components/menu/recipe/use-yields.ts'
import { YieldStrip } from '#components/menu/recipe/yield-strip.tsx'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { toNumber } from '#lib/recipes/rational.ts'
import type { RecipeSheet } from '#lib/recipes/sheet/recipe-sheet.ts'
import type { YieldSaved } from '#lib/tasting/yields.ts'

const SHOWN = 9

/** A batch that was measured: taken out, or counted after all, by whoever signs it. */
function Batch({ one, yields }: { readonly one: YieldSaved; readonly yields: CardYields }) {
  const { measured: words } = useRecipeWords()
  const [isAsking, setAsking] = useState(false)
  const [initials, setInitials] = useState('')
  const { out } = one
  const isOut = out !== null
  const ask = (next: boolean) => {
    setInitials('')
    setAsking(next)
  }
  const row = words.row(one.on, one.typed, one.ratio, one.factor)
  const mark = async () => {
    if (await yields.mark(one.id, !isOut, initials)) ask(false)
  }
  return (
    <li data-out={isOut || undefined}>
      <span>
        {isOut ? <del>{row}</del> : row}
        {out && (
          <small>{words.outSince(out.at, yields.timeZone, yields.initials[out.by] ?? null)}</small>
        )}
      </span>
      {!isAsking && (
        <Button kind="quiet" onClick={() => ask(true)}>
          {isOut ? words.count : words.takeOut}
        </Button>
      )}
      {isAsking && (
        <div className={styles.mark}>
          <Field
            label={words.initials}
            maxLength={6}
            value={initials}
            onChange={({ target }) => setInitials(target.value.toUpperCase())}
          />
          <Button
            kind={isOut ? 'main' : 'no'}
            lacks={initials.trim() === '' ? words.initialsFirst : null}
            disabled={yields.busy}
            onClick={() => void mark()}
          >
            {isOut ? words.countSure : words.takeOutSure}
          </Button>
          <Button kind="quiet" onClick={() => ask(false)}>
            {words.leaveIt}
          </Button>
          {yields.said !== null && <p role="alert">{yields.said}</p>}
        </div>
      )}
    </li>
  )
}

/** What own batches of this card really made, and how sure that is. */
export function MeasuredYield({
  now: { draft, served },
  sheet,
  yields,
}: {
  readonly now: RecipeNow
  readonly sheet: RecipeSheet
  readonly yields: CardYields | null
}) {
  const { measured: words } = useRecipeWords()
  if (served === null || yields === null) return null
  const { own, earlier, corrected } = yields
  const stated = sheet.checked.code === 'checked' ? sheet.checked.byBatches?.stated : undefined
  return (
    <section className={styles.enough} aria-label={words.title}>
      <h2>{words.title}</h2>
      {corrected === null ? (
        <p>{own.length > 0 ? words.noneCounts : words.none}</p>
      ) : (
        <>
          <p>
            <b>
              {stated === undefined
                ? words.ofPercent(corrected)
                : words.ofPortions(stated, corrected)}
            </b>
          </p>
          <p>{words.makeInstead(toNumber(sheet.factor), corrected)}</p>
          {corrected.range !== null && <p>{words.rangeIs}</p>}
        </>
      )}
      {own.length > 0 && <YieldStrip {...{ own, corrected }} />}
      {own.length > 0 && (
        <ul className={styles.batches} aria-label={words.batches}>
          {own
            .slice(-SHOWN)
            .reverse()
            .map((one) => (
              <Batch key={one.id} {...{ one, yields }} />
            ))}
        </ul>
      )}
      {earlier > 0 && <p>{words.earlier(earlier)}</p>}
      <p className={page.links}>
        <a href={`/tasting?station=${draft.station}&taste=${served.component}`}>{words.taste}</a>
      </p>
    </section>
  )
}
