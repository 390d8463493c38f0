import type { ConnectRefusal } from '#lib/access/http.ts'
import type {
  Answer,
  CommandMessage,
  EventsMessage,
  Follow,
  Followed,
  ForecastMessage,
  GuestsMessage,
  PictureMessage,
  PulseMessage,
  Welcome,
} from '#lib/protocol/wire.ts'

export interface TransportHandlers {
  welcome(message: Welcome): void
  events(message: EventsMessage): void
  picture(message: PictureMessage): void
  pulse(message: PulseMessage): void
  guests(message: GuestsMessage): void
  /** The newest wins. */
  forecast(message: ForecastMessage): void
  /**
   * The connection is gone, and the transport is trying to get it back; or the server refuses it, and
   * it doesn't try by itself.
   */
  lost(refused?: ConnectRefusal): void
}

/** A connection that comes back by itself. Requests reject when no reply comes in time. */
export interface Transport {
  listen(handlers: TransportHandlers): void
  follow(message: Follow): Promise<Followed>
  command(message: CommandMessage): Promise<Answer>
  /** Tries to get back a connection that was refused. */
  again(): void
  close(): void
}
