/** The larder over http: shown, and asked, by devices that lead or are in charge. */
import { z } from 'zod'
import type { LarderCommand } from '#lib/larder/command.ts'
import { LOT_DISCARD_REASONS } from '#lib/larder/event.ts'
import { LOT_PLACES } from '#lib/larder/lot.ts'
import { PACKS } from '#lib/larder/relabelled.ts'
import { type LabelsHere, larderShown } from '#lib/larder/shelf-view.ts'
import { MOST_PASSPHRASE_UNITS } from '#lib/protocol/wire.ts'
import { initialsField, momentField, readingField } from '#lib/service/commands/food-fields.ts'
import type { Access } from '#server/access/access.ts'
import { type MenuRoute, shows, takesMenu } from '#server/http/menu-route.ts'
import type { Larder } from '#server/larder/larder-rail.ts'

const lot = z.string().min(1).max(200)
const day = z.iso.date().optional()
const ofLot = { lot, initials: initialsField }

const command: z.ZodType<LarderCommand> = z.discriminatedUnion('type', [
  z.strictObject({
    type: z.literal('readLot'),
    ...ofLot,
    reading: readingField,
    presentUntil: momentField.optional(),
  }),
  z.strictObject({
    type: z.literal('moveLot'),
    ...ofLot,
    place: z.strictObject({ where: z.enum(LOT_PLACES), shelf: z.int().min(1).max(9) }),
  }),
  z.strictObject({ type: z.literal('freezeLot'), ...ofLot, preparedOn: day, useBy: day }),
  z.strictObject({ type: z.literal('thawLot'), ...ofLot }),
  z.strictObject({
    type: z.literal('throwOutLot'),
    ...ofLot,
    reason: z.enum(LOT_DISCARD_REASONS),
  }),
  z.strictObject({ type: z.literal('anotherTookLot'), ...ofLot }),
  z.strictObject({ type: z.literal('lotIsBack'), ...ofLot }),
  z.strictObject({
    type: z.literal('confirmLotLabel'),
    ...ofLot,
    ingredient: z.string().min(1).max(200),
    pack: z.enum(PACKS),
    saw: z.int().min(0),
  }),
  z.strictObject({ type: z.literal('confirmLarderClock'), initials: initialsField }),
])

const BODY = z.strictObject({
  /** Made on the device: the same again gets the same answer and has no second effect. */
  id: z.string().min(1).max(80),
  command,
  /** Of what only somebody in charge says. */
  proof: z.strictObject({ passphrase: z.string().max(MOST_PASSPHRASE_UNITS) }).optional(),
})

export const larderRows = ({
  larder,
  labels,
  access,
  now,
}: {
  readonly larder: Pick<Larder, 'newest' | 'submit'>
  readonly labels: LabelsHere
  readonly access: Pick<Access, 'adults' | 'from'>
  readonly now: () => number
}): readonly MenuRoute[] => {
  const told = async () => ({
    code: 'done',
    ...larderShown(await larder.newest(), now(), labels),
  })
  return [
    shows('/larder/now', told),
    takesMenu('/larder/do', BODY, async ({ id, command: asked, proof }, request) => {
      if (asked.type !== 'confirmLotLabel')
        return { ...(await told()), answer: await larder.submit(id, asked) }
      const tried = await access.adults.proveInCharge(proof?.passphrase ?? '', access.from(request))
      if (tried.code === 'too-many-tries') return tried
      if (tried.code !== 'right') return { code: 'not-it' }
      const answer = await larder.submit(id, asked, tried.adult.id)
      return { ...(await told()), answer }
    }),
  ]
}
