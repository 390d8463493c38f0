/** What is told of a service, to each role what it is sent: worked out once for roles that are sent the same. */
import type { Logger } from 'pino'
import type { Server, Socket } from 'socket.io'
import type { WhichHouse } from '#lib/access/http.ts'
import { type CrewRole, isCrew, isSent, SIGHTS, sightOf } from '#lib/access/seen/classes.ts'
import { namesFor } from '#lib/access/seen/names.ts'
import { project, projectForecast, projectState } from '#lib/access/seen/project.ts'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import type { Followed, ScreenMessages, ServerMessages } from '#lib/protocol/wire.ts'
import { pickUpPicture } from '#lib/rooms/shelf/views/pick-up.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { Role } from '#lib/service/roles.ts'
import { newestEvent } from '#lib/spine/newest-event.ts'
import type { Guests } from '#server/guests/port.ts'
import type { Rail } from '#server/rail/rail.ts'

type Followable = Socket<ScreenMessages, ServerMessages>

export interface TellingPorts {
  /** Whose services these are, since two houses may have one of the same id. */
  readonly house: WhichHouse
  readonly io: Pick<Server<ScreenMessages, ServerMessages>, 'to' | 'sockets'>
  readonly guests: Pick<Guests, 'of'>
  readonly newest: (service: string) => StationForecast | null
  readonly logger: Logger
}

export interface Telling {
  /** From then on a connection is told of this service and no other, as its role is. */
  follow(socket: Followable, role: Role, rail: Rail, position: number): Promise<Followed>
  happened(rail: Rail, events: readonly Recorded[]): void
  forecast(forecast: StationForecast): void
  /** The names that these commands brought are to be forgotten by screens, too. */
  forgotten(service: string, commands: readonly string[]): void
}

const OF_A_SERVICE = 'service '

export const createTelling = ({ house, io, guests, newest, logger }: TellingPorts): Telling => {
  const pictureRoom = (service: string): string => `${OF_A_SERVICE}${house} ${service} picture`
  const crewRoom = (service: string, role: CrewRole): string =>
    `${OF_A_SERVICE}${house} ${service} ${sightOf(role)}`
  const failed = (error: unknown): void => logger.error({ err: error }, 'names were not told')
  const isThere = (room: string): boolean => (io.sockets.adapter.rooms.get(room)?.size ?? 0) > 0

  /** One role of all that are sent the same, with the room of their screens, where there are any. */
  const listening = (service: string): readonly (readonly [role: CrewRole, room: string])[] =>
    [...SIGHTS.values()]
      .map((role) => [role, crewRoom(service, role)] as const)
      .filter(([, room]) => isThere(room))

  const tellNames = async (socket: Followable, role: CrewRole, rail: Rail): Promise<void> => {
    if (!isSent(role, 'name') || rail.state().stage !== 'open') return
    const names = namesFor(role, rail.state(), await guests.of(rail.service, 'name'))
    if (Object.keys(names).length > 0) socket.emit('guests', { service: rail.service, names })
  }

  const tellNewNames = async (rail: Rail, sentBy: ReadonlySet<string>): Promise<void> => {
    const { service } = rail
    const listeners = listening(service).filter(([role]) => isSent(role, 'name'))
    if (listeners.length === 0) return
    const apart = await guests.of(service, 'name')
    for (const [role, room] of listeners) {
      const all = namesFor(role, rail.state(), apart)
      const names = Object.fromEntries(Object.entries(all).filter(([id]) => sentBy.has(id)))
      if (Object.keys(names).length > 0) io.to(room).emit('guests', { service, names })
    }
  }

  /** What was planned is told as a state: the screens of the rush fold what happens since an opening. */
  const caughtUp = (role: CrewRole, rail: Rail, position: number): Followed => {
    const isFromPlan = position === 0 && rail.state().plan !== undefined
    const events = isFromPlan ? null : rail.eventsAfter(position)
    return events
      ? { kind: 'events', events: events.map((event) => project(role, newestEvent(event))) }
      : {
          kind: 'snapshot',
          position: rail.position(),
          state: projectState(role, rail.state()),
        }
  }

  return {
    follow: async (socket, role, rail, position) => {
      const { service } = rail
      const room = isCrew(role) ? crewRoom(service, role) : pictureRoom(service)
      for (const before of socket.rooms)
        if (before.startsWith(OF_A_SERVICE) && before !== room) await socket.leave(before)
      await socket.join(room)
      if (!isCrew(role)) return { kind: 'picture', picture: pickUpPicture(rail.state()) }
      const forecast = newest(service)
      if (forecast) socket.emit('forecast', { service, forecast: projectForecast(role, forecast) })
      void tellNames(socket, role, rail).catch(failed)
      return caughtUp(role, rail, position)
    },
    happened: (rail, events) => {
      const { service } = rail
      for (const [role, room] of listening(service)) {
        const sent = events.map((event) => project(role, event))
        io.to(room).emit('events', { service, events: sent })
      }
      if (isThere(pictureRoom(service)))
        io.to(pictureRoom(service)).emit('picture', {
          service,
          picture: pickUpPicture(rail.state()),
        })
      const named = events.flatMap((event) =>
        event.type === 'ticketSent' && event.named && event.command !== null ? [event.command] : [],
      )
      if (named.length > 0) void tellNewNames(rail, new Set(named)).catch(failed)
    },
    forgotten: (service, commands) => {
      const names = Object.fromEntries(commands.map((command) => [command, '']))
      for (const [role, room] of listening(service))
        if (isSent(role, 'name')) io.to(room).emit('guests', { service, names })
    },
    forecast: (forecast) => {
      const { service } = forecast
      for (const [role, room] of listening(service))
        io.to(room).emit('forecast', { service, forecast: projectForecast(role, forecast) })
    },
  }
}
