import { describe, expect, onTestFinished, test } from 'vitest'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { createDriver } from '#server/shell/driver.ts'
import { IN_CHARGE } from '#tests/support/access-room.ts'
import { createSocketRoom } from '#tests/support/socket-room.ts'

const RIGHT = IN_CHARGE.passphrase

const createRoom = async () => {
  const room = await createSocketRoom()
  await room.make()
  const token = async () => room.token('counter')
  const { client, socket, close } = connectCrew(room.url, 'counter', token)
  onTestFinished(close)
  await whenView(client, (view) => view.link === 'live')
  let ids = 0
  const newId = () => `d-${++ids}`
  const drive = createDriver({ client, socket, role: 'counter', newId })
  return { ...room, drive: (line: object) => drive(JSON.stringify(line)) }
}

describe('a line with a passphrase', () => {
  test('[I8] gives its command as the person in charge', async () => {
    const { drive, given } = await createRoom()
    const command = { type: 'correct', pan: 'pan-rice', amount: 0 }
    expect(await drive({ command, passphrase: RIGHT })).toEqual({
      id: 'd-1',
      answer: 'accepted',
      position: 12,
    })
    expect(given).toMatchObject([{ id: 'd-1', by: 'in-charge' }])
    expect(await drive({ command })).toMatchObject({ code: 'role-may-not' })
  })

  test('[I9] that is wrong is told at once, without it', async () => {
    const { drive } = await createRoom()
    const command = { type: 'signOn' }
    const wrong = await drive({ command, passphrase: 'right of the grill' })
    expect(wrong).toEqual({ id: 'd-1', answer: 'not taken', code: 'wrong-passphrase' })
    expect(await drive({ command, passphrase: 7 })).toEqual({
      answer: 'not taken',
      code: 'not-a-line',
    })
  })
})
