/** Every command, in the order in which they are told; what else is known of them all follows from it. */
import { z } from 'zod'
import { answerAdvice } from '#lib/service/commands/advice.ts'
import { finishBatch, recordCooking, startBatch } from '#lib/service/commands/batch.ts'
import { cancel } from '#lib/service/commands/cancel.ts'
import { change } from '#lib/service/commands/change.ts'
import { close, confirmClock } from '#lib/service/commands/close.ts'
import { recordCooling, recordReheating } from '#lib/service/commands/cooling.ts'
import { correct } from '#lib/service/commands/correct.ts'
import type { Circumstances, Decision } from '#lib/service/commands/decision.ts'
import { answerHandedOver } from '#lib/service/commands/handed-over.ts'
import { acceptCaution, signOff, signOn } from '#lib/service/commands/in-charge.ts'
import { endKeep, keep } from '#lib/service/commands/keep.ts'
import { changeLabel, notSameProduct } from '#lib/service/commands/label.ts'
import { changePan, load, topUp } from '#lib/service/commands/load.ts'
import { finish, handOver, remake, start, takeBack } from '#lib/service/commands/make.ts'
import { open } from '#lib/service/commands/open.ts'
import { soilPan } from '#lib/service/commands/pans.ts'
import { pay } from '#lib/service/commands/pay.ts'
import { remakeMixedUp } from '#lib/service/commands/remake-mixed-up.ts'
import { resolveOffSale } from '#lib/service/commands/resolve-off-sale.ts'
import { missScoop, scoopBack } from '#lib/service/commands/scoop.ts'
import { resumeSelling, stopSelling } from '#lib/service/commands/selling.ts'
import { send } from '#lib/service/commands/send.ts'
import { setBackup } from '#lib/service/commands/set-backup.ts'
import { setDay } from '#lib/service/commands/set-day.ts'
import { readShelf, resolveShelf } from '#lib/service/commands/shelf.ts'
import { acknowledge } from '#lib/service/commands/stop-build.ts'
import { tellNeed } from '#lib/service/commands/tell-need.ts'
import { readTemperature } from '#lib/service/commands/temperature.ts'
import { throwOut } from '#lib/service/commands/throw-out.ts'
import { startTimeClock } from '#lib/service/commands/time-clock.ts'
import { wait } from '#lib/service/commands/wait.ts'
import { wantedGone } from '#lib/service/commands/wanted-gone.ts'
import { waste } from '#lib/service/commands/waste.ts'
import type { Role } from '#lib/service/roles.ts'
import type { ServiceState } from '#lib/service/state.ts'

export const COMMANDS = [
  open,
  startBatch,
  recordCooking,
  finishBatch,
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
