/** What deliveries are decided by, and the labels that they make unread. */
import type { LarderCommand } from '#lib/larder/command.ts'
import type { ReceivingFood, ReceivingKnown } from '#lib/larder/delivery.ts'
import type { UnreadFrom } from '#lib/larder/recall.ts'
import type { Guard } from '#server/event-log/port.ts'
import type { LabelsGuard } from '#server/rail/labels-guard.ts'

export interface DeliveryPorts {
  /** null: no station of the house lists it. */
  readonly food: (ingredient: string) => ReceivingFood | null
  readonly guard: Pick<LabelsGuard, 'next' | 'guardOf'>
  /** Told as soon as it is durable. */
  readonly onUnread: (delivered: readonly UnreadFrom[]) => void
}

/** What a command of a delivery is decided by; undefined for any other. */
export const deliveredBy = async (
  { food, guard }: DeliveryPorts,
  command: LarderCommand,
): Promise<ReceivingKnown | undefined> =>
  'delivery' in command
    ? { food: food(command.delivery.ingredient), labelVersion: await guard.next() }
    : undefined

/** Nobody else gets the versions that labels are unread from. */
export const guardsOfUnread = (
  { guard }: DeliveryPorts,
  delivered: readonly UnreadFrom[],
): readonly Guard[] => delivered.map(({ version }) => guard.guardOf(version))
