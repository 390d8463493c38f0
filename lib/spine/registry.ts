/** Every command, in the order in which they are told; what else is known of them all follows from it. */
import { z } from 'zod'
import { answerAdvice } from '#lib/rooms/advice/commands/advice.ts'
import { changeLabel, notSameProduct } from '#lib/rooms/care/commands/label.ts'
import { close, confirmClock } from '#lib/rooms/day/commands/close.ts'
import { dropPlan } from '#lib/rooms/day/commands/drop-plan.ts'
import { endFood } from '#lib/rooms/day/commands/end-food.ts'
import { acceptCaution, signOff, signOn } from '#lib/rooms/day/commands/in-charge.ts'
import { open } from '#lib/rooms/day/commands/open.ts'
import { plan } from '#lib/rooms/day/commands/plan.ts'
import { setDay } from '#lib/rooms/day/commands/set-day.ts'
import { throwOutHot } from '#lib/rooms/day/commands/throw-out-hot.ts'
import { finishBatch, recordCooking, startBatch } from '#lib/rooms/food/commands/batch.ts'
import { recordCooling, recordReheating } from '#lib/rooms/food/commands/cooling.ts'
import { answerHandedOver } from '#lib/rooms/food/commands/handed-over.ts'
import { resolveOffSale } from '#lib/rooms/food/commands/resolve-off-sale.ts'
import { readSanitizer } from '#lib/rooms/food/commands/sanitizer.ts'
import { takeFromLarder } from '#lib/rooms/food/commands/take-from-larder.ts'
import { readTemperature } from '#lib/rooms/food/commands/temperature.ts'
import { throwOut } from '#lib/rooms/food/commands/throw-out.ts'
import { startTimeClock } from '#lib/rooms/food/commands/time-clock.ts'
import { finish, handOver, remake, start, takeBack } from '#lib/rooms/making/commands/make.ts'
import { remakeMixedUp } from '#lib/rooms/making/commands/remake-mixed-up.ts'
import { acknowledge } from '#lib/rooms/making/commands/stop-build.ts'
import { cancel } from '#lib/rooms/orders/commands/cancel.ts'
import { change } from '#lib/rooms/orders/commands/change.ts'
import { pay } from '#lib/rooms/orders/commands/pay.ts'
import { send } from '#lib/rooms/orders/commands/send.ts'
import { tellNeed } from '#lib/rooms/orders/commands/tell-need.ts'
import { wait } from '#lib/rooms/orders/commands/wait.ts'
import { wantedGone } from '#lib/rooms/orders/commands/wanted-gone.ts'
import { correct } from '#lib/rooms/pans/commands/correct.ts'
import { endKeep, keep } from '#lib/rooms/pans/commands/keep.ts'
import { changePan, load, topUp } from '#lib/rooms/pans/commands/load.ts'
import { soilPan } from '#lib/rooms/pans/commands/pans.ts'
import { missScoop, scoopBack } from '#lib/rooms/pans/commands/scoop.ts'
import { resumeSelling, stopSelling } from '#lib/rooms/pans/commands/selling.ts'
import { setBackup } from '#lib/rooms/pans/commands/set-backup.ts'
import { waste } from '#lib/rooms/pans/commands/waste.ts'
import { planPrep } from '#lib/rooms/prep/commands/plan-prep.ts'
import { passTask, takeBackTick, tickTask } from '#lib/rooms/prep/commands/task.ts'
import { readShelf, resolveShelf } from '#lib/rooms/shelf/commands/shelf.ts'
import type { Circumstances, Decision } from '#lib/service/commands/decision.ts'
import type { Role } from '#lib/service/roles.ts'
import type { ServiceState } from '#lib/service/state.ts'

export const COMMANDS = [
  plan,
  dropPlan,
  planPrep,
  tickTask,
  takeBackTick,
  passTask,
  open,
  startBatch,
  recordCooking,
  finishBatch,
  takeFromLarder,
  recordCooling,
  recordReheating,
  startTimeClock,
  load,
  changePan,
  topUp,
  correct,
  send,
  change,
  cancel,
  acknowledge,
  start,
  finish,
  takeBack,
  remake,
  remakeMixedUp,
  handOver,
  pay,
  stopSelling,
  resumeSelling,
  signOn,
  signOff,
  acceptCaution,
  tellNeed,
  changeLabel,
  notSameProduct,
  soilPan,
  setBackup,
  readTemperature,
  resolveOffSale,
  readShelf,
  resolveShelf,
  readSanitizer,
  throwOut,
  answerHandedOver,
  setDay,
  waste,
  keep,
  endKeep,
  wantedGone,
  missScoop,
  scoopBack,
  answerAdvice,
  wait,
  confirmClock,
  endFood,
  throwOutHot,
  close,
] as const

type Definition = (typeof COMMANDS)[number]

export type CommandType = Definition['type']

export const COMMAND_TYPES: readonly CommandType[] = COMMANDS.map(({ type }) => type)

const [first, ...others] = COMMANDS

/** Every command, as it may come from outside. */
export const commandSchema = z.discriminatedUnion('type', [
  first.schema,
  ...others.map(({ schema }) => schema),
])

export type Command = z.infer<typeof commandSchema>

const given = (may: (definition: Definition) => boolean): readonly CommandType[] =>
  COMMANDS.filter(may).map(({ type }) => type)

const isOf =
  (role: 'counter' | 'assembly' | 'hand-over' | 'in-charge') =>
  ({ who }: Definition): boolean =>
    who.some((one) => one === role)

/** What a student never does, and what counts only with the passphrase of the person in charge. */
export const ONLY_IN_CHARGE = given(isOf('in-charge'))

/** What each role may do. The lead stands in for any of the crew. */
export const MAY: Readonly<Record<Role, readonly CommandType[]>> = {
  counter: given(isOf('counter')),
  assembly: given(isOf('assembly')),
  'hand-over': given(isOf('hand-over')),
  lead: COMMAND_TYPES.filter((type) => !ONLY_IN_CHARGE.includes(type)),
  'in-charge': COMMAND_TYPES,
  'pick-up': [],
}

export const mayDo = (role: Role, command: CommandType): boolean => MAY[role].includes(command)

const BY_TYPE: ReadonlyMap<CommandType, Definition> = new Map(
  COMMANDS.map((one) => [one.type, one]),
)

/** What a command does by itself: what follows from that isn't said by it. */
export const decideAlone = (
  state: ServiceState,
  command: Command,
  circumstances: Circumstances,
): Decision => {
  const definition = BY_TYPE.get(command.type)
  if (!definition) throw new Error(`there is no command ${command.type}`)
  return definition.decide(state, command, circumstances)
}
