/** A small batch that is tried, on a lead's device. The server's answers are told, so that nothing is written. */
import type { Page } from '@playwright/test'
import type { TastingsNow } from '#lib/tasting/http.ts'
import type { Tasting, ToldByTaster } from '#lib/tasting/tasting.ts'
import { tastingEn as words } from '#lib/words/tasting/tasting-en.ts'
import { SCHOOL } from '#tests/support/school-line.ts'
import {
  DAWN,
  keeps,
  NONE,
  NOT_SURE,
  READ,
  TASTING,
  TASTING_STATION,
} from '#tests/support/tasting.ts'
import { on, type View } from './view.ts'

const toldTastings =
  (tasting: Partial<Tasting> | null, told: ToldByTaster = {}) =>
  (view: View): View => ({
    ...view,
    asLead: true,
    asksOnly: true,
    reach: async (page: Page) => {
      const now: TastingsNow = {
        ...{ code: 'done', now: DAWN, station: TASTING_STATION },
        tastings: tasting ? [{ tasting: { ...TASTING, ...tasting }, told }] : [],
      }
      await page.route('**/tasting/now*', (route) => route.fulfill({ json: now }))
      await page.reload()
      await view.reach?.(page)
    },
    leaves: async (page: Page) => page.unroute('**/tasting/now*'),
  })

/** As the server knows it; what is told of it is a line with a card. */
const station = `station=${SCHOOL.id}`
const form = on(`/tasting?${station}`, 'tasting')
const one = on(`/tasting?${station}&tasting=${TASTING.id}`, 'tasting')
const SCENE = 'school, nothing planned'
const WHOLE = { isWhole: true } as const

const asked = (by: ToldByTaster): Pick<Tasting, 'tasters'> => ({
  tasters: TASTING.tasters.map((taster) => ({
    ...taster,
    told: by[taster.number] ? `c${taster.number}` : null,
  })),
})

const FISH: ToldByTaster = { 1: keeps('fish'), 2: NONE }
const UNSURE: ToldByTaster = { 1: keeps('fish'), 2: NOT_SURE }
const MANY: ToldByTaster = {
  ...{ 1: keeps('fish'), 2: NONE, 3: keeps('sesame', 'leave-out') },
  ...{ 4: keeps('milk'), 5: NONE, 6: NONE },
}
const many = {
  ...{ components: ['tuna', 'beans', 'chicken', 'slaw', 'peppers'], portions: 6 },
  tasters: Object.keys(MANY).map((number) => ({ number: Number(number), told: `c${number}` })),
}
const making = { ...asked(FISH), stage: 'making' } as const
const low = { ...READ, temperature: { tenths: 1280, scale: 'F' } } as const
const ready = { ...making, stage: 'ready', readings: [READ] } as const
const eaten = {
  ...ready,
  stage: 'over',
  tasted: [{ component: 'tuna', typed: '6 oz', ratio: 0.83, saved: true }],
} as const

export const tastingViews: readonly View[] = [
  toldTastings(null)(form('nothing tasted', SCENE, words.form.lacks('food'), [], WHOLE)),
  toldTastings(null)(
    form('chosen', SCENE, 'Tuna salad and black beans', ['Tuna salad', 'Black beans'], {
      ...WHOLE,
      main: [/^Plan this/],
    }),
  ),
  toldTastings({})(one('nobody asked', SCENE, words.toAsk([1, 2]), [], WHOLE)),
  toldTastings(asked({ 1: keeps('fish') }), { 1: keeps('fish') })(
    one('asking', SCENE, words.tapFirst, [/^Taster 2/], WHOLE),
  ),
  toldTastings(
    asked(UNSURE),
    UNSURE,
  )(one('nobody can', SCENE, words.nobody('Tuna salad'), [], WHOLE)),
  toldTastings(
    asked(FISH),
    FISH,
  )(
    one('asked', SCENE, words.instead(2), [], {
      ...WHOLE,
      main: [/^Everybody/],
    }),
  ),
  toldTastings(many, MANY)(one('six tasters', SCENE, words.taster(6), [], WHOLE)),
  toldTastings(
    { ...many, stage: 'making' },
    MANY,
  )(one('five foods', SCENE, words.read('Herb chicken'), [], { long: true })),
  toldTastings(
    { ...many, stage: 'ready', readings: [READ] },
    MANY,
  )(one('weighing one of five', SCENE, words.smallBatch, [], { long: true })),
  toldTastings(making, FISH)(one('cooking', SCENE, words.toRead(['Black beans']), [], WHOLE)),
  toldTastings(
    making,
    FISH,
  )(one('reading', SCENE, 'Middle, stirred', [words.read('Black beans')], WHOLE)),
  toldTastings(
    { ...making, readings: [low] },
    FISH,
  )(one('too low', SCENE, words.toCookOn(['Black beans']), [], WHOLE)),
  toldTastings(
    { ...making, readings: [READ] },
    FISH,
  )(one('ready', SCENE, words.readySub, [], { ...WHOLE, main: [/^Ready to taste/] })),
  toldTastings(
    ready,
    FISH,
  )(one('weighing', SCENE, words.smallBatch, [], { ...WHOLE, main: [/^The tasting is over/] })),
  toldTastings(eaten)(one('over', SCENE, words.isOver(['Tuna salad']), [], WHOLE)),
]
