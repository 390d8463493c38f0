/** A command, declared once: what it says, who gives it and when, what it does, and how it is told. */
import { z } from 'zod'
import { type Circumstances, type Decision, refuse } from '#lib/service/commands/decision.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { Role } from '#lib/service/roles.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'

/** Of a service: before anything is known of it, planned, open, and once it is closed. */
export type Stage = ServiceState['stage']

/** Why a command that isn't for a stage is refused in it. */
const NOT_NOW: Readonly<Record<Stage, Refusal>> = {
  none: { code: 'service-not-open' },
  planned: { code: 'service-not-open' },
  open: { code: 'service-already-open' },
  closed: { code: 'service-closed' },
}

/** Before it is planned or opened a service has no station. */
type StateIn<In extends Stage> = In extends 'none' ? ServiceState : RunningState

/** Roles of the crew that may give it besides the adults, or the person in charge and nobody else. */
export type Givers =
  | readonly Exclude<Role, 'lead' | 'in-charge' | 'pick-up'>[]
  | readonly ['in-charge']

/** What a command of these fields says, once it is parsed. */
export type Told<Fields extends z.ZodRawShape> = z.output<z.ZodObject<Fields, z.core.$strict>>

/** A command of a definition, as it is parsed. */
export type CommandOf<Definition extends { readonly schema: z.ZodType }> = z.output<
  Definition['schema']
>

type Given<Fields extends z.ZodRawShape> = z.input<z.ZodObject<Fields, z.core.$strict>>

interface Declared<Type extends string, Fields extends z.ZodRawShape, In extends Stage> {
  /** The name that people use for the act. */
  readonly type: Type
  readonly who: Givers
  /** When it may come. */
  readonly stages: readonly [In, ...In[]]
  /** Its fields. Shapes are parsed, meanings are decided. */
  readonly schema: Fields
  /** What it does by itself: what follows from that isn't said by it. */
  readonly decide: (
    state: StateIn<In>,
    command: Told<Fields>,
    circumstances: Circumstances,
  ) => Decision
  /** Worth trying in a state, the likeliest first, in a service of the station of that id. */
  readonly sample: (state: StateIn<In>, station: string) => readonly Given<Fields>[]
  /** Ids in lib/RULES.md. */
  readonly rules: readonly [string, ...string[]]
  /** As PROTOCOL.md shows it. */
  readonly example: Given<Fields>
  /** What PROTOCOL.md says after the example. */
  readonly tells?: string
}

/**
 * A command as the registry takes it. It is refused where it isn't for the stage of the service, or
 * only for the person in charge, who has proved to be it by passphrase; else it is decided.
 */
export const defineCommand = <
  const Type extends string,
  Fields extends z.ZodRawShape,
  In extends Stage,
>({
  type,
  who,
  stages,
  schema: fields,
  decide,
  sample,
  rules,
  example,
  tells = '',
}: Declared<Type, Fields, In>) => {
  const schema = z.strictObject({ type: z.literal(type), ...fields })
  const isOwn = (command: {
    readonly type: string
  }): command is { readonly type: string } & Told<Fields> => command.type === type
  const isIn = (state: ServiceState): state is ServiceState & StateIn<In> =>
    stages.some((stage) => stage === state.stage)
  return {
    type,
    who,
    stages,
    schema,
    rules,
    example: { type, ...example },
    tells,
    /** @throws where the command is another */
    decide: (
      state: ServiceState,
      command: { readonly type: string },
      circumstances: Circumstances,
    ): Decision => {
      if (!isOwn(command)) throw new Error(`${command.type} isn’t ${type}`)
      if (!isIn(state)) return refuse(NOT_NOW[state.stage])
      if (who[0] === 'in-charge' && circumstances.by !== 'in-charge')
        return refuse({ code: 'not-in-charge' })
      return decide(state, command, circumstances)
    },
    /** None where it isn't for the stage of the service. */
    samples: (state: ServiceState, station: string) =>
      isIn(state) ? sample(state, station).map((given) => schema.parse({ type, ...given })) : [],
  }
}
