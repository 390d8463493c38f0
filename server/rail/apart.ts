/**
 * What is said of people leaves a command here, before anything decides on it: so no event, no answer
 * and no log can hold it, whatever a command makes of its fields.
 */
import type { SetApart } from '#lib/access/apart.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import { LETTERS } from '#lib/service/tickets.ts'
import type { Command } from '#lib/spine/registry.ts'
import type { Need, Reason } from '#lib/station/codes/codes.ts'

/** In the place of a name or of initials: that there are some counts, which they are doesn't. */
export const STANDS_FOR_SOMEBODY = 'apart'

/** Of a crew, whom it names once more is the same one: that two entries are one person's counts. */
type OfCrew = `p${number}`

type Mark = typeof STANDS_FOR_SOMEBODY | OfCrew

/** A command without what is said of people: a new one that says it doesn't compile until it is set apart. */
type Bare<Said> = Said extends object
  ? {
      [Key in keyof Said]: Key extends 'name' | 'initials'
        ? Exclude<Said[Key], string> | Mark
        : Key extends 'reason'
          ? Exclude<Said[Key], Reason>
          : Key extends 'readBy'
            ? null
            : Bare<Said[Key]>
    }
  : Said

export type BareCommand = Bare<Command>

export interface Parted {
  readonly command: BareCommand
  readonly apart: readonly SetApart[]
}

interface ReasonTold {
  readonly letter: string
  readonly code: string
  readonly reason: Reason
}

const bareNeeds = (needs: readonly Need[]) =>
  needs.map(({ code, handling }) => ({ code, handling, reason: null }))

const bareChoice = (choice: BuildChoice) => ({ ...choice, needs: bareNeeds(choice.needs) })

const reasonsOf = (letter: string, needs: readonly Need[]): readonly ReasonTold[] =>
  needs.flatMap(({ code, reason }) => (reason === null ? [] : [{ letter, code, reason }]))

const told = (reasons: readonly ReasonTold[]): readonly SetApart[] =>
  reasons.length === 0 ? [] : [{ kind: 'reasons', body: JSON.stringify(reasons) }]

const initialled = (initials: string | null | undefined): readonly SetApart[] =>
  initials == null ? [] : [{ kind: 'initials', body: initials }]

type OfInitials<One> = One extends object ? ('initials' extends keyof One ? One : never) : never

const hasInitials = (command: Command): command is OfInitials<Command> => 'initials' in command

/** A command as it is decided, and what goes to the second file under its id. */
export const setApart = (command: Command): Parted => {
  if (command.type === 'send') {
    const { name, builds, ...rest } = command
    return {
      command: {
        ...rest,
        builds: builds.map(bareChoice),
        ...(name === undefined ? {} : { name: STANDS_FOR_SOMEBODY }),
      },
      apart: [
        ...(name === undefined ? [] : [{ kind: 'name', body: name } as const]),
        ...told(builds.flatMap(({ needs }, index) => reasonsOf(LETTERS.charAt(index), needs))),
      ],
    }
  }
  if ('to' in command)
    return {
      command: { ...command, to: bareChoice(command.to) },
      apart: told(reasonsOf(command.letter, command.to.needs)),
    }
  if ('needs' in command)
    return {
      command: { ...command, needs: bareNeeds(command.needs) },
      apart: told(reasonsOf(command.letter, command.needs)),
    }
  // Its order brings its reasons itself when it is sent; before, nobody needs them.
  if ('build' in command)
    return { command: { ...command, build: bareChoice(command.build) }, apart: [] }
  if ('label' in command) {
    const { initials, label, ...rest } = command
    // A page of before says who read a label in the label itself.
    const by = initials ?? label.readBy
    return {
      command: {
        ...rest,
        label: { ...label, readBy: null },
        ...(by === null ? {} : { initials: STANDS_FOR_SOMEBODY }),
      },
      apart: initialled(by),
    }
  }
  if (command.type === 'plan') {
    const { crew, ...rest } = command
    const initials = crew.map((one) => one.initials)
    const people = [...new Set(initials)]
    const markOf = (said: string): OfCrew => `p${people.indexOf(said) + 1}`
    return {
      command: {
        ...rest,
        crew: crew.map((one) => ({ ...one, initials: markOf(one.initials) })),
      },
      apart: initials.length === 0 ? [] : initialled(JSON.stringify(initials)),
    }
  }
  if (!hasInitials(command)) return { command, apart: [] }
  const { initials, ...rest } = command
  return initials === undefined
    ? { command: rest, apart: [] }
    : { command: { ...rest, initials: STANDS_FOR_SOMEBODY }, apart: initialled(initials) }
}
