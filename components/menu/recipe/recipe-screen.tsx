'use client'

import { useSearchParams } from 'next/navigation'
import { Suspense, useState } from 'react'
import page from '#components/access/page.module.css'
import { CostPanel } from '#components/menu/recipe/cost-panel.tsx'
import { EnoughPanel } from '#components/menu/recipe/enough-panel.tsx'
import { InvoiceForm } from '#components/menu/recipe/invoice-form.tsx'
import { MeasuredYield } from '#components/menu/recipe/measured-yield.tsx'
import { MethodPanel } from '#components/menu/recipe/method-panel.tsx'
import styles from '#components/menu/recipe/recipe.module.css'
import { RecipeLine } from '#components/menu/recipe/recipe-line.tsx'
import { ScaledTable } from '#components/menu/recipe/scaled-table.tsx'
import { type RecipeNow, useRecipe } from '#components/menu/recipe/use-recipe.ts'
import { useYields } from '#components/menu/recipe/use-yields.ts'
import { WantedFields } from '#components/menu/recipe/wanted-fields.tsx'
import { RecipeWordsProvider, useRecipeWords } from '#components/menu/recipe-words.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { Note } from '#components/ui/note.tsx'
import { componentsWith } from '#lib/editor/cards/served-as.ts'
import { textIn } from '#lib/editor/draft.ts'
import type { Card } from '#lib/recipes/card.ts'
import { type Asked, recipeSheet } from '#lib/recipes/sheet/recipe-sheet.ts'

const UNASKED: Asked = { make: '', handOf: null, hand: '', fits: '', portions: '' }

/** The card on paper, at the same yield. */
const cardAddress = (
  station: string,
  recipe: string,
  { make, handOf, hand, fits, portions }: Asked,
) =>
  `/paper/recipe?${new URLSearchParams({
    station,
    recipe,
    make,
    ...(handOf === null ? {} : { handOf: String(handOf), hand }),
    fits,
    portions,
  })}`

function Sheet({ now, card }: { readonly now: RecipeNow; readonly card: Card }) {
  const words = useRecipeWords()
  const [asked, setAsked] = useState(UNASKED)
  const fits = now.vessel?.holds ?? asked.fits
  const yields = useYields(now)
  const measured = yields?.corrected ?? null
  const sheet = recipeSheet(card, now.box, now.served, { ...asked, fits }, measured)
  return (
    <div className={styles.body} data-notch-panel="">
      <a href={cardAddress(now.draft.station, card.id, { ...asked, fits })}>{words.onPaper}</a>
      <p className={styles.card}>
        {words.asCard(card.yields)}
        {sheet.yieldProblem && <b role="alert"> {words.problem(sheet.yieldProblem)}</b>}
      </p>
      <WantedFields now={now} card={card} asked={asked} sheet={sheet} onAsk={setAsked} />
      <div className={styles.columns}>
        <div className={styles.main}>
          <ScaledTable
            sheet={sheet}
            onWhole={(handOf, hand) => setAsked({ ...asked, make: '', handOf, hand })}
          />
          <MethodPanel now={now} card={card} />
          <CostPanel now={now} sheet={sheet} />
        </div>
        <div className={styles.aside}>
          <EnoughPanel now={now} sheet={sheet} asked={asked} onAsk={setAsked} />
          <MeasuredYield now={now} sheet={sheet} yields={yields} />
          <InvoiceForm now={now} card={card} />
        </div>
      </div>
    </div>
  )
}

function Choose({ now }: { readonly now: RecipeNow }) {
  const words = useRecipeWords()
  const cards = [...now.box.cards.values()]
  return cards.length === 0 ? (
    <Note>{words.none}</Note>
  ) : (
    <nav aria-label={words.choose} className={`${page.links} ${styles.body}`} data-notch-panel="">
      {cards.map(({ id, name }) => (
        <a key={id} href={`/menu/recipe?station=${now.draft.station}&recipe=${id}`}>
          {name}
        </a>
      ))}
    </nav>
  )
}

function RecipeOf({ station, recipe }: { readonly station: string; readonly recipe: string }) {
  const words = useRecipeWords()
  const { now, refused } = useRecipe(station, recipe)
  const lit = now?.card ? componentsWith(now.draft, recipe) : []
  const isShut = refused === 'not-yours' || refused === 'not-joined'
  const house = textIn(now?.draft.rows.house, 'name')
  const title = now?.card ? words.of(now.card.name, house) : words.title
  return (
    <main className={`${page.page} ${styles.page}`}>
      <header className={page.top}>
        <h1>{title}</h1>
        <button type="button" className={styles.print} onClick={() => window.print()}>
          {words.print}
        </button>
        <a href={`/menu?station=${station}`}>{words.back}</a>
      </header>
      {isShut && <Note kind="no">{words.notLead}</Note>}
      {!isShut && refused !== null && (
        <Note kind="watch" role="status">
          {words.lost}
        </Note>
      )}
      {now === null && refused === null && <p>{words.connecting}</p>}
      {now && (
        <Notch about={lit} className={styles.stage ?? ''}>
          <RecipeLine draft={now.draft} lit={lit} />
          {now.card ? <Sheet now={now} card={now.card} /> : <Choose now={now} />}
        </Notch>
      )}
      {now && recipe !== '' && !now.card && <Note kind="watch">{words.noSuch}</Note>}
    </main>
  )
}

function OfAddress() {
  const asked = useSearchParams()
  return <RecipeOf station={asked.get('station') ?? ''} recipe={asked.get('recipe') ?? ''} />
}

/** A recipe at any yield, as kitchen measures: whether it is enough, and what it costs. */
export function RecipeScreen() {
  return (
    <RecipeWordsProvider>
      <Suspense fallback={null}>
        <OfAddress />
      </Suspense>
    </RecipeWordsProvider>
  )
}
