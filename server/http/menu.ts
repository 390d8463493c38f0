/** A station is set up over http: /menu and below. */
import { z } from 'zod'
import { type Json, KINDS, SINGLES } from '#lib/editor/draft.ts'
import { MOST_PASSPHRASE_UNITS } from '#lib/protocol/wire.ts'
import { stationShape } from '#lib/station/shapes/station-parts-schema.ts'
import type { Access } from '#server/access/access.ts'
import type { Menu } from '#server/drafts/menu.ts'
import { type MenuRoute, shows, takesMenu } from '#server/http/menu-route.ts'

const MOST_DEEP = 8

const isJson = (value: unknown, deep = 0): value is Json => {
  if (value === null || ['string', 'boolean'].includes(typeof value)) return true
  if (typeof value === 'number') return Number.isFinite(value)
  if (typeof value !== 'object' || deep >= MOST_DEEP) return false
  return Object.values(value).every((one) => isJson(one, deep + 1))
}

const id = z.string().min(1).max(80)
const station = z.string().min(1).max(80)
const saw = z.int().min(0)
const kind = z.enum(KINDS)
const entity = z.enum([...SINGLES, ...KINDS])
const field = z.string().max(40)

const step = z.discriminatedUnion('do', [
  z.strictObject({
    do: z.literal('put'),
    entity,
    id,
    fields: z.record(
      field,
      z.custom<Json>((value) => isJson(value)),
    ),
    clear: z.array(field).max(40).optional(),
  }),
  z.strictObject({ do: z.literal('remove'), entity: kind, id }),
  z.strictObject({
    do: z.literal('move'),
    entity: kind,
    id,
    before: id.nullable(),
    well: id.optional(),
  }),
  z.strictObject({ do: z.literal('rename'), entity, id, name: z.string().max(2_000) }),
])

const BODIES = {
  steps: z.strictObject({ station, saw, steps: z.array(step).max(1_000) }),
  begin: z.strictObject({
    from: station,
    name: z.string().max(2_000),
    // A browser may know zones that this server doesn't: then the server's own is proposed.
    timeZone: stationShape.shape.timeZone.optional().catch(undefined),
  }),
  publish: z.strictObject({
    station,
    saw,
    proof: z.string().max(MOST_PASSPHRASE_UNITS),
    neverTouched: z.literal(true).optional(),
  }),
  back: z.strictObject({ station, saw, revision: z.int().min(1) }),
}

export const menuRows = (
  access: Pick<Access, 'adults' | 'from'>,
  menu: Menu,
): readonly MenuRoute[] => [
  shows('/menu/stations', () => ({ code: 'done', ...menu.list() })),
  shows('/menu/draft', ({ query }) => {
    const after = query('after')
    if (!/^\d{0,15}$/.test(after)) return { code: 'not-as-asked' }
    return menu.draft(query('station'), after === '' ? null : Number(after))
  }),
  takesMenu('/menu/steps', BODIES.steps, menu.save),
  takesMenu('/menu/begin', BODIES.begin, menu.begin),
  takesMenu('/menu/publish', BODIES.publish, async ({ proof, ...wanted }, request) => {
    const { neverTouched = false } = wanted
    const { proveInCharge, proveAny } = access.adults
    const tried = await (neverTouched ? proveInCharge : proveAny)(proof, access.from(request))
    if (tried.code === 'too-many-tries') return tried
    if (tried.code !== 'right') return { code: 'not-it' }
    return menu.publish({ ...wanted, adult: tried.adult.id, neverTouched })
  }),
  shows('/menu/revisions', ({ query }) => menu.revisions(query('station'))),
  shows('/menu/compare', ({ query }) => menu.compare(query('station'), query('from'), query('to'))),
  takesMenu('/menu/back', BODIES.back, menu.back),
]
