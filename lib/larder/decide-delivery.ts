/** Decides what is received and what goes back. */
import type { LarderCommand, LarderRefusal } from '#lib/larder/command.ts'
import { asksCold, lastReceived } from '#lib/larder/deliveries.ts'
import {
  type DeliveredFood,
  type Delivery,
  type DeliveryRead,
  MOST_DAYS_AHEAD,
  MOST_LOT,
  type ReceivingFood,
  type ReceivingKnown,
  type SaidDelivery,
} from '#lib/larder/delivery.ts'
import type { LarderEvent } from '#lib/larder/event.ts'
import { civilDate, daysBetween } from '#lib/measure/civil.ts'
import { arrivalLack, questionArrival, turnedAway } from '#lib/safety/receiving.ts'
import { isTemperature } from '#lib/safety/temperature.ts'

export type DeliveryCommand = Extract<
  LarderCommand,
  { readonly type: 'receiveDelivery' | 'sendBackDelivery' }
>

type Refused = { readonly refusal: LarderRefusal }

const takenRead = (
  { comes, reading }: SaidDelivery,
  scale: ReceivingFood['scale'],
): { readonly read: DeliveryRead | null } | Refused => {
  if (reading === undefined) return { read: null }
  const temperature = { tenths: reading.tenths, scale: reading.scale }
  const asked = isTemperature(temperature)
    ? questionArrival(comes, temperature, scale)
    : ({ code: 'cannot-be' } as const)
  const isConfirmed =
    asked?.code === 'did-you-mean' && !asked.must && reading.scaleConfirmed === true
  if (asked && !isConfirmed)
    return { refusal: { code: 'lot-reading-asked', question: asked, read: temperature } }
  const probe = reading.probe?.trim() ?? ''
  return probe === ''
    ? { refusal: { code: 'lot-reading-lacks', lack: 'no-probe' } }
    : { read: { temperature, probe } }
}

const foodOf = (
  said: SaidDelivery,
  { name, scale }: ReceivingFood,
): { readonly food: DeliveredFood } | Refused => {
  const lot = said.lot?.trim() || null
  if (lot !== null && lot.length > MOST_LOT)
    return { refusal: { code: 'delivery-lot-too-long', most: MOST_LOT } }
  const taken = takenRead(said, scale)
  if ('refusal' in taken) return taken
  const { ingredient, same = null, comes, solid = null, useBy, packs = null } = said
  const cold = said.needsNoCold && comes === 'dry' ? { needsNoCold: true as const } : {}
  return {
    food: { ingredient, name, same, comes, read: taken.read, solid, useBy, lot, packs, ...cold },
  }
}

/** Why a food isn't received; null where it is. */
const notReceived = (
  food: DeliveredFood,
  { limits, timeZone, cold }: ReceivingFood,
  before: readonly Delivery[],
  now: number,
): LarderRefusal | null => {
  const { same, comes, read, solid, useBy, lot } = food
  const arrived = { comes, read: read?.temperature ?? null, solid, useBy }
  const today = civilDate(now, timeZone)
  const because = turnedAway(arrived, today, limits)
  if (because) return { code: 'delivery-turned-away', because }
  const lack = arrivalLack(arrived)
  if (lack) return { code: 'delivery-not-read', lack }
  if (same === null) return { code: 'delivery-not-compared' }
  const last = lastReceived(before)
  // The answer of before is taken over only for the very product that it was given of.
  if (asksCold(food, cold, last) && !food.needsNoCold) return { code: 'delivery-dry-unasked' }
  if (comes === 'shellfish' && lot === null) return { code: 'delivery-no-lot' }
  return useBy !== null && daysBetween(today, useBy) > MOST_DAYS_AHEAD
    ? { code: 'delivery-date-far', useBy }
    : null
}

/**
 * What is said of a delivered food, as it happened, or why it isn't taken. Where another product comes,
 * or nobody knows, the house's label of the ingredient is unread from now on.
 *
 * @param now epoch milliseconds, the server's
 * @param told.isUnsure the clock jumped and nobody has said that it is right: no date is judged by it
 * @param told.before what came of it, the newest last
 */
export const decideDelivery = (
  command: DeliveryCommand,
  known: ReceivingKnown,
  now: number,
  { isUnsure, before }: { readonly isUnsure: boolean; readonly before: readonly Delivery[] },
): { readonly events: readonly LarderEvent[] } | Refused => {
  const { initials, delivery } = command
  if (initials === undefined || initials.trim() === '')
    return { refusal: { code: 'needs-initials' } }
  if (known.food === null) return { refusal: { code: 'delivery-no-such-food' } }
  const said = foodOf(delivery, known.food)
  if ('refusal' in said) return said
  const { food } = said
  if (command.type === 'sendBackDelivery')
    return { events: [{ type: 'deliverySentBack', food, why: command.why }] }
  if (isUnsure) return { refusal: { code: 'larder-clock-unsure' } }
  const refusal = notReceived(food, known.food, before, now)
  if (refusal) return { refusal }
  const label = food.same === 'same' ? {} : { labelVersion: known.labelVersion }
  return { events: [{ type: 'deliveryReceived', food, ...label }] }
}
