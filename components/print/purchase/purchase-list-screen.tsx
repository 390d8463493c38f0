'use client'

import { useState } from 'react'
import { tell } from '#components/access/ask.ts'
import { useAccess } from '#components/access/use-access.ts'
import { ListBody } from '#components/print/list/list-body.tsx'
import { PlanPaper, PlanPaperScreen, type PlanShown } from '#components/print/list/plan-paper.tsx'
import { PlacesPanel } from '#components/print/purchase/places-panel.tsx'
import { purchaseSections } from '#components/print/purchase/purchase-texts.ts'
import { usePaperWords } from '#components/print/words.tsx'
import { cardBoxOf } from '#lib/editor/cards/card-box.ts'
import { type Draft, type Rows, rowsOf } from '#lib/editor/draft.ts'
import type { MenuDraft, SaveSteps } from '#lib/editor/http.ts'
import type { ReceivingShown } from '#lib/larder/receiving-view.ts'
import { type Cards, cardsOf } from '#lib/paper/lists/made-of.ts'
import { listPages } from '#lib/paper/page/list-layout.ts'
import type { Paper } from '#lib/paper/page/papers.ts'
import { cameLast } from '#lib/paper/purchase/came-last.ts'
import { purchaseFacts } from '#lib/paper/purchase/purchase-facts.ts'
import { LIES, type Lies } from '#lib/station/codes/lies.ts'

const SHARES = [0.26, 0.19, 0.2, 0.35] as const
const LOOK_EVERY_MS = 5_000
const DELIVERIES_EVERY_MS = 30_000

const liesIn = (draft: Draft): Readonly<Record<string, Lies | undefined>> =>
  Object.fromEntries(
    rowsOf(draft, 'ingredient').map(({ id, row }) => [id, LIES.find((one) => one === row.lies)]),
  )

/** What is bought, what its packs hold and where it lies is the newest that is typed, published or not. */
const withBought = (cards: Cards, draft: Draft | null): Cards =>
  draft === null
    ? cards
    : {
        ...cards,
        box: {
          ...cards.box,
          bought: new Map([...cards.box.bought, ...cardBoxOf(draft).bought]),
        },
      }

function List({ shown }: { readonly shown: PlanShown }) {
  const words = usePaperWords()
  const { state, plan, prep, ahead } = shown
  const { station } = state
  const { seen, again } = useAccess<MenuDraft>(`/menu/draft?station=${station.id}`, LOOK_EVERY_MS)
  const { seen: received } = useAccess<ReceivingShown>(
    `/larder/deliveries?station=${station.id}`,
    DELIVERIES_EVERY_MS,
  )
  const [isFailed, setFailed] = useState(false)
  // Asked for without `after`, it is all of them.
  const draft: Draft | null = seen && { station: station.id, rows: seen.rows as Rows }
  const published = Object.fromEntries(station.ingredients.map(({ id, lies }) => [id, lies]))
  const lies = { ...published, ...(draft === null ? {} : liesIn(draft)) }
  const facts = purchaseFacts(
    withBought(cardsOf(station, ahead.answer.yields), draft),
    prep.foods,
    lies,
    received ? cameLast(received) : {},
  )
  const put = async (id: string, place: Lies) => {
    if (seen === null) return setFailed(true)
    const steps: SaveSteps = {
      ...{ station: station.id, saw: seen.saw },
      steps: [{ do: 'put', entity: 'ingredient', id, fields: { lies: place }, clear: [] }],
    }
    const answer = await tell<object>('/menu/steps', steps)
    setFailed(answer.code !== 'done')
    await again()
  }
  const { columns } = words.purchase
  // Nothing is asked once all is said; while the draft is lost nothing can be.
  const asksPlaces = draft !== null && facts.places.some((one) => one.lies === null)
  const sections = purchaseSections(words, facts)
  const make = (paper: Paper) => ({
    title: words.purchase.title,
    sub: words.prep.sub(plan.on, plan.doorsOpen, state.expected),
    signed: [words.purchase.boughtBy],
    foot: words.purchase.foot,
    bodies: listPages(paper, {
      ...{ shares: SHARES, sections, lead: 0 },
      headings: [columns.what, columns.needed, columns.for, columns.buy],
    }).map((page, at) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: a page has no name but its number
      <ListBody key={at} page={page} />
    )),
  })
  return (
    <PlanPaper
      shown={shown}
      make={make}
      aside={
        asksPlaces ? (
          <PlacesPanel facts={facts} isFailed={isFailed} onPlace={(id, to) => void put(id, to)} />
        ) : undefined
      }
    />
  )
}

/** What has to be bought for a plan, printed from the browser. */
export function PurchaseListScreen() {
  return (
    <PlanPaperScreen
      titleOf={(words) => words.purchase.title}
      render={(shown) => <List shown={shown} />}
    />
  )
}
