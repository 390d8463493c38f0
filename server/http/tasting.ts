/** Tastings over http: planned, asked of and ended by devices that lead or are in charge. */
import { z } from 'zod'
import { SCALES } from '#lib/safety/temperature.ts'
import { clockField, idField } from '#lib/service/commands/fields.ts'
import { dayField, initialsField } from '#lib/service/commands/food-fields.ts'
import { withoutReaders } from '#lib/station/label.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { TastingCommand } from '#lib/tasting/command.ts'
import type { TastingDone, TastingsNow, YieldMarked, YieldsNow } from '#lib/tasting/http.ts'
import { MOST_PORTIONS, MOST_TASTERS } from '#lib/tasting/tasting.ts'
import { type MenuCoded, type MenuRoute, shows, takesMenu } from '#server/http/menu-route.ts'
import type { Tastings } from '#server/tasting/tastings.ts'

const ofTasting = { tasting: z.string().min(1).max(80) }

const need = z.strictObject({ code: idField, handling: z.enum(['keep-apart', 'leave-out']) })

const seconds = z.int().min(0).max(86_400).optional()

const reading = {
  tenths: z.int(),
  scale: z.enum(SCALES),
  probe: z.string().trim().max(40),
  where: z.enum(['middle-stirred', 'thickest-part', 'surface']),
  heldSeconds: seconds,
  stoodSeconds: seconds,
  scaleConfirmed: z.boolean().optional(),
}

const measured = z.strictObject({
  component: idField,
  typed: z.string().max(60),
  saved: z.boolean(),
})

const command: z.ZodType<TastingCommand> = z.discriminatedUnion('type', [
  z.strictObject({
    type: z.literal('planTasting'),
    station: idField,
    on: dayField,
    from: clockField,
    to: clockField,
    period: z.string().trim().min(1).max(60).nullable(),
    portions: z.int().min(1).max(MOST_PORTIONS),
    tasters: z.int().min(1).max(MOST_TASTERS),
    components: z.array(idField).max(200).readonly(),
  }),
  z.strictObject({
    type: z.literal('askTaster'),
    ...ofTasting,
    taster: z.int().min(1).max(MOST_TASTERS),
    asked: z.enum(['none', 'needs', 'not-sure']),
    needs: z.array(need).max(60).readonly(),
  }),
  z.strictObject({ type: z.literal('addTaster'), ...ofTasting }),
  z.strictObject({ type: z.literal('leaveOutOfTasting'), ...ofTasting, component: idField }),
  z.strictObject({ type: z.literal('makeTasting'), ...ofTasting }),
  z.strictObject({
    type: z.literal('readTasting'),
    ...{ ...ofTasting, ...reading },
    component: idField,
    initials: initialsField,
  }),
  z.strictObject({ type: z.literal('readyToTaste'), ...ofTasting }),
  z.strictObject({
    type: z.literal('endTasting'),
    ...ofTasting,
    initials: initialsField,
    yields: z.array(measured).max(200).readonly(),
  }),
  z.strictObject({ type: z.literal('dropTasting'), ...ofTasting }),
])

/** Made on the device: the same again gets the same answer and has no second effect. */
const id = z.string().regex(/^[\w-]{1,80}$/)

const BODY = z.strictObject({ id, command })

const MARK = z.strictObject({
  ...{ id, station: idField },
  yields: z.string().min(1).max(200),
  isOut: z.boolean(),
  initials: initialsField,
})

export const tastingRows = (deps: {
  readonly tastings: Pick<Tastings, 'of' | 'submit' | 'yieldsTold' | 'mark'>
  /** The newest published one; of the first station where none is named. */
  readonly station: (id: string) => StationDocument | null
  readonly now: () => number
}): readonly MenuRoute[] => [
  shows('/tasting/now', async ({ query }): Promise<MenuCoded | TastingsNow> => {
    const station = deps.station(query('station'))
    if (!station) return { code: 'no-such-station' }
    const tastings = await deps.tastings.of(station.id)
    return { code: 'done', now: deps.now(), station: withoutReaders(station), tastings }
  }),
  // A station that isn't published yet has a recipe's page too, and no batches of its own.
  shows('/tasting/yields', async ({ query }): Promise<YieldsNow> => {
    const station = deps.station(query('station'))
    if (!station) return { code: 'done', yields: [], initials: {}, timeZone: null }
    const told = await deps.tastings.yieldsTold(station.id)
    return { code: 'done', ...told, timeZone: station.timeZone }
  }),
  takesMenu(
    '/tasting/yield',
    MARK,
    async ({ id: command, ...asked }): Promise<MenuCoded | YieldMarked> => {
      const answer = await deps.tastings.mark(command, asked)
      return answer ? { code: 'done', answer } : { code: 'no-such-station' }
    },
  ),
  takesMenu(
    '/tasting/do',
    BODY,
    async ({ id, command: asked }): Promise<MenuCoded | TastingDone> => {
      const answer = await deps.tastings.submit(id, asked)
      return answer ? { code: 'done', answer } : { code: 'no-such-station' }
    },
  ),
]
