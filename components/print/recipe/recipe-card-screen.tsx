'use client'

import { useSearchParams } from 'next/navigation'
import { Suspense } from 'react'
import { useMeasured } from '#components/menu/recipe/use-measured.ts'
import { useRecipe } from '#components/menu/recipe/use-recipe.ts'
import { PlainPaper } from '#components/print/list/plain-paper.tsx'
import { PaperWordsProvider, usePaperWords } from '#components/print/words.tsx'
import { useSheet } from '#components/sheet/use-sheet.ts'
import { rowOf, textIn, textsIn } from '#lib/editor/draft.ts'
import { paperOf } from '#lib/paper/page/papers.ts'
import { cardLimits } from '#lib/paper/recipe/card-limits.ts'
import { ingredientsOfCard, saidOfMade } from '#lib/paper/recipe/card-said.ts'
import { recipeSheet } from '#lib/recipes/sheet/recipe-sheet.ts'
import { findComponent } from '#lib/station/find.ts'
import { asReadOn } from '#lib/station/read-again.ts'

/** The card in the address, at the yield in the address: as its screen scales it. */
function Card() {
  const words = usePaperWords()
  const asked = useSearchParams()
  const station = asked.get('station') ?? ''
  const said = (name: string) => asked.get(name) ?? ''
  const component = said('component')
  const { now: ofRecipe, refused } = useRecipe(station, said('recipe'))
  // Asked for by its component, it is that component's one recipe.
  const byComponent = ofRecipe ? rowOf(ofRecipe.draft, 'component', component) : undefined
  const [only = '', ...others] = byComponent ? textsIn(byComponent, 'recipes') : []
  const id = said('recipe') !== '' ? said('recipe') : others.length === 0 ? only : ''
  const { now: ofComponent } = useRecipe(station, id)
  const now = said('recipe') === '' ? ofComponent : ofRecipe
  const { of: measured } = useMeasured(station, now)
  const { answer } = useSheet()
  const told = answer?.facts ?? null
  const facts = told !== null && told.station.id === station ? told : null
  const card = now?.card ?? null
  const hand = said('hand')
  const sheet =
    now && card
      ? recipeSheet(
          card,
          now.box,
          now.served,
          {
            make: said('make'),
            handOf: hand === '' ? null : Number(said('handOf')),
            hand,
            fits: now.vessel?.holds ?? said('fits'),
            portions: said('portions'),
          },
          measured?.corrected ?? null,
        )
      : null
  const served =
    facts && now?.served ? findComponent(facts.station, now.served.component) : undefined
  const note =
    refused === 'not-yours' || refused === 'not-joined'
      ? words.frame.notLead
      : refused !== null
        ? words.frame.lost
        : now === null
          ? words.frame.loading
          : card === null
            ? words.card.noSuch
            : null
  const read = facts && asReadOn(facts.station, facts.servedOn)
  return (
    <PlainPaper
      title={card?.name ?? words.card.noTitle}
      station={textIn(now?.draft.rows.house, 'name')}
      facts={[
        words.card.draft,
        ...(answer && facts ? [words.setUp.printed(answer.at, facts.station.timeZone)] : []),
      ]}
      demo={answer?.demo === true || facts?.station.invented === true ? words.setUp.demo : null}
      foot={words.card.foot}
      usual={paperOf(facts?.station.locale ?? 'en-US')}
      shares={words.card.shares}
      headings={words.card.headings}
      sections={
        sheet === null || card === null || now === null
          ? null
          : words.card.sections({
              sheet,
              make: said('make'),
              yields: card.yields,
              scoop: now.served?.scoop ?? null,
              level: now.served?.level ?? null,
              vessel: now.vessel,
              steps: now.steps,
              limits: read && served ? cardLimits(read, served) : null,
              said: read && saidOfMade(read, ingredientsOfCard(now.box, card.id)),
              scale: facts?.station.safety.scale ?? 'F',
            })
      }
      links={<a href={`/menu/recipe?station=${station}&recipe=${id}`}>{words.card.toRecipe}</a>}
      note={note}
    />
  )
}

/** A recipe card at any yield, printed from the browser. */
export function RecipeCardScreen() {
  return (
    <PaperWordsProvider>
      <Suspense fallback={null}>
        <Card />
      </Suspense>
    </PaperWordsProvider>
  )
}
