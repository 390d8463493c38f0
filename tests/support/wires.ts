/** Wires between crew clients and the tiny server, which carry, lose and cut when a test says. */
import type { Answer } from '#lib/protocol/wire.ts'
import { createScreen, type TinyServer, welcomeTo } from '#tests/support/crew.ts'

interface Message {
  deliver(): void
  drop(): void
}

/** A screen on a wire of its own: each way in order, and all that is under way gone when it is cut. */
export const createWire = (server: TinyServer, index: number) => {
  const screen = createScreen({ prefix: `screen${index}` })
  let isUp = false
  let followed: string | null = null
  let toServer: Message[] = []
  let toScreen: Message[] = []

  const push = (deliver: () => void) => toScreen.push({ deliver, drop: () => undefined })

  /** What the screen asked since the last look goes onto the wire; over none, it fails. */
  const collect = (asSnapshot: boolean, isBusy: boolean): void => {
    for (const asked of screen.follows.splice(0))
      toServer.push({
        drop: asked.fail,
        deliver: () => {
          followed = asked.message.service
          const reply = server.follow(asked.message, asSnapshot)
          toScreen.push({
            deliver: () => asked.reply(isBusy ? { kind: 'busy' } : reply),
            drop: asked.fail,
          })
        },
      })
    for (const asked of screen.commands.splice(0))
      toServer.push({
        drop: asked.fail,
        deliver: () => {
          const { id, service, command } = asked.message
          const answer: Answer = isBusy
            ? { id, answer: 'not taken', because: { code: 'busy' } }
            : server.take(service, id, command)
          toScreen.push({ deliver: () => asked.reply(answer), drop: asked.fail })
        },
      })
    if (!isUp) for (const message of toServer.splice(0)) message.drop()
  }

  server.onEvents((service, events) => {
    if (isUp && followed === service) push(() => screen.say.events({ service, events }))
  })

  return {
    screen,
    collect,
    isUp: () => isUp,
    isQuiet: () => toServer.length + toScreen.length === 0,
    connect: () => {
      if (isUp) return
      isUp = true
      const service = server.current()
      push(() => screen.say.welcome(welcomeTo(service)))
    },
    cut: () => {
      if (!isUp) return
      isUp = false
      followed = null
      const lost = [...toServer, ...toScreen]
      toServer = []
      toScreen = []
      screen.say.lost()
      for (const message of lost) message.drop()
    },
    /** Drops the oldest request as if no reply came in time. */
    forget: () => toServer.shift()?.drop(),
    pulse: () => {
      const service = server.current()
      const position = server.eventsOf(service ?? '').length
      if (isUp) push(() => screen.say.pulse({ at: 1, service, position }))
    },
    serve: () => toServer.shift()?.deliver(),
    show: () => toScreen.shift()?.deliver(),
  }
}
