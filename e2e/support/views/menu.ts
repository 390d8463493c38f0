/** A station while it is set up, on a lead's device. The server's answers are told, so that nothing is written. */
import type { Page } from '@playwright/test'
import { carryWords } from '#lib/carry/words/carry-en.ts'
import { changesBetween } from '#lib/editor/changes-between.ts'
import type { Draft, Row } from '#lib/editor/draft.ts'
import { draftOf, type WrittenDocument } from '#lib/editor/draft-of.ts'
import type { Compared, MenuDraft, MenuRevisions } from '#lib/editor/http.ts'
import { missingFor } from '#lib/editor/missing-for.ts'
import { problemsOf } from '#lib/editor/problems-of.ts'
import { menuEn as words } from '#lib/editor/words/menu-en.ts'
import { setUpSheetEn } from '#lib/paper/words/set-up-sheet-en.ts'
import { recipeEn } from '#lib/words/recipe/recipe-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { on, type View } from './view.ts'

const ADDRESS = `/menu?station=${demoStation.id}`
const TODAY = '2026-11-25'

export const whole = draftOf(JSON.parse(JSON.stringify(demoStation)) as WrittenDocument)

const put = ({ station, rows }: Draft, changed: Readonly<Record<string, Row>>): Draft => ({
  station,
  rows: { ...rows, ...changed },
})

/** A dearer item, a pan that holds too much, one that isn't set. */
const changed = put(whole, {
  'item:garden-chicken': { ...whole.rows['item:garden-chicken'], priceCents: 950 },
  'pan:pan-rice': { ...whole.rows['pan:pan-rice'], usualPortions: 400 },
  'component:slaw': { ...whole.rows['component:slaw'], name: '', portion: null },
})

const priced = (id: string, packTyped: string, cents: number): Row => ({
  ...whole.rows[`ingredient:${id}`],
  invoices: [{ date: '2026-11-20', packs: 1, packTyped, cents }],
})

/** A card with amounts that makes a third more than its pan takes, a pot, and what was paid. */
const costed = put(whole, {
  house: {
    ...whole.rows.house,
    vessels: [
      { id: 'vessel-1', name: 'Mixer bowl', holds: '20 qt' },
      { id: 'vessel-2', name: 'Oven', holds: '4 full pans, 2 1/2 in' },
    ],
  },
  'recipe:tuna-mix': {
    ...whole.rows['recipe:tuna-mix'],
    yields: '4 qt',
    vessel: 'vessel-1',
    lines: [
      { of: 'tuna', typed: '1 #10 can' },
      { of: 'dressed-mayonnaise', typed: '1 1/2 cups' },
      { of: 'relish', typed: '1/3 cup' },
    ],
  },
  'recipe:dressed-mayonnaise': {
    ...whole.rows['recipe:dressed-mayonnaise'],
    yields: '2 cups',
    lines: [
      { of: 'mayonnaise', typed: '1 3/4 cups' },
      { of: 'lemon-juice', typed: '1/4 cup' },
    ],
  },
  'ingredient:tuna': priced('tuna', '6 x #10 cans', 7_200),
  'ingredient:mayonnaise': priced('mayonnaise', '4 gal', 5_200),
  'ingredient:lemon-juice': priced('lemon-juice', '1 qt', 450),
  'ingredient:relish': priced('relish', '1 gal', 1_600),
})

const answerOf = (
  draft: Draft,
  published: number | null,
): MenuDraft & { readonly code: 'done' } => {
  const problems = problemsOf(draft, {})
  return {
    code: 'done',
    station: draft.station,
    saw: 1,
    rows: draft.rows,
    labels: {},
    idsOfBefore: [],
    problems,
    missing: missingFor(draft, {}, problems, TODAY),
    published,
    changed: draft !== whole,
    open: false,
    today: TODAY,
  }
}

const REVISIONS: MenuRevisions & { readonly code: 'done' } = {
  code: 'done',
  revisions: [
    { revision: 2, at: Date.parse('2026-11-24T16:00Z') },
    { revision: 1, at: null },
  ],
}

const compared = (draft: Draft): Compared & { readonly code: 'done' } => ({
  code: 'done',
  changes: changesBetween(whole, draft),
})

const PATHS = '**/menu/{draft,revisions,compare}?*'

export const toldMenu = (
  view: View,
  then: (page: Page) => Promise<void> = async () => {},
  draft: Draft = whole,
  address = ADDRESS,
): View => ({
  ...view,
  asLead: true,
  reach: async (page) => {
    await page.route(PATHS, (route) => {
      const asked = new URL(route.request().url()).pathname
      const json = asked.endsWith('draft')
        ? answerOf(draft, 2)
        : asked.endsWith('compare')
          ? compared(draft)
          : REVISIONS
      return route.fulfill({ json })
    })
    await page.goto(address)
    await page.getByRole('heading', { level: 1 }).waitFor()
    await then(page)
  },
  leaves: async (page) => {
    // It goes on asking.
    await page.goto('about:blank')
    await page.unroute(PATHS)
  },
})

const tap =
  (...names: readonly (string | RegExp)[]) =>
  async (page: Page): Promise<void> => {
    for (const name of names) await page.getByRole('button', { name }).first().click()
  }

const { sections } = words.screen
const { leaves } = words.pan
const RICE = /^Brown rice, half/
const menu = on('/menu', 'menu')
const recipe = on('/menu', 'recipe')
const carry = on('/menu', 'carry')
const paper = on('/paper/set-up', 'paper')

export const RECIPE = `/menu/recipe?station=${demoStation.id}&recipe=${demoStation.recipes[0]?.id}`
const TUNA = `/menu/recipe?station=${demoStation.id}&recipe=tuna-mix`
const CARRY = `/menu/carry?station=${demoStation.id}`

export const menuViews: readonly View[] = [
  toldMenu(menu('the line', 'quiet', words.screen.tapPan, [], { long: true })),
  ...(['made', 'portion'] as const).map((leaf) =>
    toldMenu(
      menu(`a pan, ${leaf}`, 'quiet', leaves[leaf], [], { isWhole: true }),
      tap(RICE, leaves[leaf]),
    ),
  ),
  ...(['again', 'guest'] as const).map((leaf) =>
    toldMenu(menu(`a pan, ${leaf}`, 'quiet', leaves[leaf]), tap(RICE, leaves[leaf])),
  ),
  toldMenu(menu('items', 'quiet', words.item.tapItem), tap(sections.items)),
  toldMenu(
    menu('an item', 'quiet', words.item.heart, [], { isWhole: true }),
    tap(sections.items, /^Garden chicken/),
  ),
  toldMenu(menu('what touches what', 'quiet', words.item.kinds.beside), tap(sections.touch)),
  toldMenu(menu('house', 'quiet', words.house.leaves.limits), tap(sections.house)),
  ...(['limits', 'kitchen'] as const).map((leaf) =>
    toldMenu(
      menu(`house, ${leaf}`, 'quiet', words.house.leaves[leaf], [], { long: true }),
      tap(sections.house, words.house.leaves[leaf]),
    ),
  ),
  toldMenu(
    menu('an item, what its food costs', 'quiet', words.item.foodOf, [], { isWhole: true }),
    tap(sections.items, /^Harbor tuna/),
    costed,
  ),
  toldMenu(recipe('one', 'quiet', recipeEn.make, [], { long: true }), undefined, whole, RECIPE),
  toldMenu(
    recipe('too much', 'quiet', recipeEn.way.enoughSub, [], { long: true }),
    undefined,
    costed,
    TUNA,
  ),
  toldMenu(
    recipe('at another yield', 'quiet', recipeEn.rounding, [], { long: true }),
    (page) => page.getByLabel(recipeEn.make, { exact: true }).fill('10 half pans, 4 in'),
    costed,
    TUNA,
  ),
  toldMenu(carry('one', 'quiet', carryWords.title, [], { long: true }), undefined, whole, CARRY),
  paper('set-up sheet', 'quiet', setUpSheetEn.revision(1)),
  toldMenu(
    menu('publish', 'quiet', words.publish.passphrase, [], { long: true }),
    tap(sections.publish),
  ),
  toldMenu(
    menu('publish, with changes', 'quiet', words.publish.changes, [], { long: true }),
    tap(sections.publish),
    changed,
  ),
]
