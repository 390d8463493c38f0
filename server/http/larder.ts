/** The larder over http: shown, and asked, by devices that lead or are in charge. */
import { z } from 'zod'
import type { LarderCommand } from '#lib/larder/command.ts'
import { MOST_PACKS, SAME_PRODUCT, SENT_BACK } from '#lib/larder/delivery.ts'
import { LOT_DISCARD_REASONS } from '#lib/larder/event.ts'
import { LOT_PLACES } from '#lib/larder/lot.ts'
import { deliveriesWithLot } from '#lib/larder/recall.ts'
import { receivingShown } from '#lib/larder/receiving-view.ts'
import { PACKS } from '#lib/larder/relabelled.ts'
import { type LabelsHere, larderShown } from '#lib/larder/shelf-view.ts'
import { MOST_PASSPHRASE_UNITS } from '#lib/protocol/wire.ts'
import { ARRIVALS } from '#lib/safety/receiving.ts'
import { SCALES } from '#lib/safety/temperature.ts'
import { initialsField, momentField, readingField } from '#lib/service/commands/food-fields.ts'
import type { Access } from '#server/access/access.ts'
import { type MenuRoute, shows, takesMenu } from '#server/http/menu-route.ts'
import type { HouseLabels } from '#server/labels/house-labels.ts'
import type { Larder } from '#server/larder/larder-rail.ts'
import type { KnownStations } from '#server/stations/known-stations.ts'

const lot = z.string().min(1).max(200)
const day = z.iso.date().optional()
const ofLot = { lot, initials: initialsField }

/** Longer than any lot: that it is too long is said in words, not by a shape. */
const MOST_TYPED = 400

const delivery = z.strictObject({
  ingredient: lot,
  same: z.enum(SAME_PRODUCT).optional(),
  comes: z.enum(ARRIVALS),
  reading: z
    .strictObject({
      tenths: z.int(),
      scale: z.enum(SCALES),
      probe: z.string().max(40).nullable(),
      scaleConfirmed: z.boolean().optional(),
    })
    .optional(),
  solid: z.boolean().optional(),
  useBy: z.iso.date().nullable(),
  lot: z.string().max(MOST_TYPED).nullable(),
  packs: z.int().min(1).max(MOST_PACKS).optional(),
  needsNoCold: z.literal(true).optional(),
})

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
  z.strictObject({ type: z.literal('receiveDelivery'), delivery, initials: initialsField }),
  z.strictObject({
    type: z.literal('sendBackDelivery'),
    delivery,
    why: z.enum(SENT_BACK),
    initials: initialsField,
  }),
])

const BODY = z.strictObject({
  /** Made on the device: the same again gets the same answer and has no second effect. */
  id: z.string().min(1).max(80),
  command,
  /** Of what only somebody in charge says. */
  proof: z.strictObject({ passphrase: z.string().max(MOST_PASSPHRASE_UNITS) }).optional(),
})

export interface LarderHttpPorts {
  readonly larder: Pick<Larder, 'newest' | 'submit' | 'entries'>
  readonly labels: Pick<HouseLabels, 'idle'>
  readonly lotLabels: LabelsHere
  readonly stations: Pick<KnownStations, 'first' | 'find' | 'all'>
  readonly access: Pick<Access, 'adults' | 'from'>
  /** Epoch milliseconds. */
  readonly now: () => number
}

export const larderRows = ({
  larder,
  labels,
  lotLabels,
  stations,
  access,
  now,
}: LarderHttpPorts): readonly MenuRoute[] => {
  const told = async () => ({
    code: 'done',
    ...larderShown(await larder.newest(), now(), lotLabels),
  })
  return [
    shows('/larder/now', told),
    takesMenu('/larder/do', BODY, async ({ id, command: asked, proof }, request) => {
      if (asked.type !== 'confirmLotLabel') {
        const answer = await larder.submit(id, asked)
        // Who is told that another product came finds the open services told too.
        await labels.idle()
        return { ...(await told()), answer }
      }
      const tried = await access.adults.proveInCharge(proof?.passphrase ?? '', access.from(request))
      if (tried.code === 'too-many-tries') return tried
      if (tried.code !== 'right') return { code: 'not-it' }
      const answer = await larder.submit(id, asked, tried.adult.id)
      return { ...(await told()), answer }
    }),
    shows('/larder/deliveries', async ({ query }) => {
      const asked = query('station')
      const station = asked === '' ? stations.first() : stations.find(asked)
      return station === null
        ? { code: 'no-such-station' }
        : {
            code: 'done',
            ...receivingShown(
              station.document,
              await larder.newest(),
              now(),
              stations.all().map(({ document }) => document),
            ),
          }
    }),
    shows('/larder/lots', async ({ query }) => ({
      code: 'done',
      deliveries: deliveriesWithLot(await larder.entries(), query('lot').slice(0, MOST_TYPED)),
    })),
  ]
}
