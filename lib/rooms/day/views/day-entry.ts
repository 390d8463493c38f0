/** What is typed of a service's day at its opening: all of it may be left empty. */
import type { OpenCommand } from '#lib/rooms/day/commands/open.ts'
import type { ServiceState } from '#lib/service/state.ts'

export interface DayEntry {
  readonly guests: string
  /** "HH:MM", as a time field gives it. */
  readonly closes: string
  readonly assemblers: string
}

export const NO_DAY: DayEntry = { guests: '', closes: '', assemblers: '' }

type Day = Pick<OpenCommand, 'guestsExpected' | 'closesAt' | 'assemblers'>

const QUARTERS_OF_A_DAY = 96
/** As the server takes them. */
export const MOST_GUESTS = 20_000
export const MOST_ASSEMBLERS = 20

/** Every quarter of an hour, "HH:MM", with `chosen` among them. */
export const closingTimes = (chosen: string): readonly string[] => {
  const quarters = Array.from({ length: QUARTERS_OF_A_DAY }, (_, quarter) => {
    const two = (count: number) => String(count).padStart(2, '0')
    return `${two(Math.floor(quarter / 4))}:${two((quarter % 4) * 15)}`
  })
  return chosen === '' || quarters.includes(chosen) ? quarters : [...quarters, chosen].sort()
}

const whole = (text: string): number | null => (/^\d{1,5}$/.test(text.trim()) ? Number(text) : null)

/** Fields whose text can't be taken: they are refused, never dropped. */
export const wrongInDay = ({
  guests,
  assemblers,
}: DayEntry): { readonly guests: boolean; readonly assemblers: boolean } => {
  const isWrong = (text: string, least: number, most: number): boolean => {
    const number = whole(text)
    return text.trim() !== '' && (number === null || number < least || number > most)
  }
  return {
    guests: isWrong(guests, 0, MOST_GUESTS),
    assemblers: isWrong(assemblers, 1, MOST_ASSEMBLERS),
  }
}

export const isDayWrong = (day: DayEntry): boolean => {
  const wrong = wrongInDay(day)
  return wrong.guests || wrong.assemblers
}

/** What is left empty, or isn't a whole number, stays as the station is set up. */
export const dayCommand = ({ guests, closes, assemblers }: DayEntry): Day => {
  const [expected, hands] = [whole(guests), whole(assemblers)]
  return {
    ...(expected === null ? {} : { guestsExpected: expected }),
    ...(closes === '' ? {} : { closesAt: closes }),
    ...(hands === null || hands < 1 ? {} : { assemblers: hands }),
  }
}

/** The day of a service as its fields show it. */
export const dayOf = (
  { expected, closesAt, assemblers }: Pick<ServiceState, 'expected' | 'closesAt' | 'assemblers'>,
  timeZone: string,
): DayEntry => ({
  guests: expected === null ? '' : String(expected),
  closes:
    closesAt === null
      ? ''
      : new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone }).format(
          closesAt,
        ),
  assemblers: String(assemblers),
})
