import { describe, expect, test } from 'vitest'
import { shownNameKey } from '#lib/rooms/care/facts/name-shown.ts'
import { handOverView } from '#lib/rooms/shelf/views/hand-over.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { linesOfParts } from '#lib/service/mark.ts'
import { findTicket } from '#lib/service/tickets.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { markLines } from '#lib/words/service-en.ts'
import {
  at,
  choose,
  given,
  needs,
  onward,
  ready,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const plain = () => choose('garden-chicken')
const milk: Need = { code: 'milk', handling: 'keep-apart', reason: 'allergy' }
const withoutMilk = (need = milk) =>
  choose('bean-and-pepper', { cheddar: 'no', 'yogurt-sauce': 'no', almonds: 'no' }, needs(need))

const made = (told: Told, ...names: string[]): Told =>
  names.reduce(
    (so, name) =>
      onward(so, { type: 'start', ...at(name), read: true }, { type: 'finish', ...at(name) }),
    told,
  )
const handOver = (name: string) => ({ type: 'handOver', ...at(name) }) as const
const view = (told: Told) => handOverView(running(told), running(told).at)

describe('the shelf', () => {
  test('[H1] the build that has stood longest comes first, whatever its number', () => {
    const told = made(given(send(plain()), send(plain()), send(plain())), '2A', '1A')
    expect(view(told).shelf.map((one) => one.name)).toEqual(['2A', '1A'])
    expect(view(told).coming).toEqual([{ name: '3A', state: 'waiting' }])
    expect(view(onward(told, handOver('2A'))).shelf.map((one) => one.name)).toEqual(['1A'])
  })

  test('[H2] one with a need kept apart is asked about first; one to leave out isn’t', () => {
    const leaveOut = withoutMilk({ ...milk, handling: 'leave-out' })
    const told = made(ready(send(withoutMilk(), leaveOut, plain())), '1A', '1B', '1C')
    expect(view(told).shelf.map((one) => one.askFirst)).toEqual([true, false, false])
  })

  test('[H2] the question is open: it names nothing that the guest could only say yes to', () => {
    expect(handOverEn.question).toMatch(/^What .*\?$/)
    expect(handOverEn.askFirst('1A') + handOverEn.askFirstHint).not.toMatch(/milk|allerg/i)
  })

  test('[H3] a name is never shown with a need, not even beside another build of its ticket', () => {
    const named = (...builds: Parameters<typeof send>) =>
      ({ ...send(...builds), name: 'Guest One' }) as ReturnType<typeof send>
    const free = made(given(named(plain())), '1A')
    expect(view(free).shelf[0]?.nameKey).toBe(findTicket(running(free), 1)?.sentBy)
    expect(view(free).shelf[0]?.nameKey).not.toBeNull()
    const mixed = made(ready(named(plain(), withoutMilk())), '1A', '1B')
    expect(view(mixed).shelf.map((one) => one.nameKey)).toEqual([null, null])
    const unnamed = made(given(send(plain())), '1A')
    expect(view(unnamed).shelf[0]?.nameKey).toBeNull()
  })

  test('[H4] it says what the ticket still costs, and where its other builds are', () => {
    const told = made(
      given(
        send(plain(), plain(), plain()),
        { type: 'cancel', ...at('1C') },
        {
          type: 'start',
          ...at('1B'),
        },
      ),
      '1A',
    )
    expect(view(told).shelf[0]).toMatchObject({
      paid: false,
      totalCents: 1300,
      siblings: [
        { name: '1B', state: 'making' },
        { name: '1C', state: 'cancelled' },
      ],
    })
    const paid = onward(told, { type: 'pay', ticket: 1, paid: true })
    expect(view(paid).shelf[0]?.paid).toBe(true)
  })

  test('[H5] the lines of the needs are told from those of the parts', () => {
    const told = made(ready(send(withoutMilk())), '1A')
    const mark = view(told).shelf[0]?.mark
    if (!mark) throw new Error('nothing on the shelf')
    expect(markLines(mark).slice(linesOfParts(mark))).toEqual(['KEEP FROM MILK'])
    expect(markLines(mark).slice(0, linesOfParts(mark))).not.toContain('KEEP FROM MILK')
  })
})

describe('what comes and what went', () => {
  test('[H6] what is being made comes before what waits', () => {
    const told = onward(given(send(plain()), send(plain())), { type: 'start', ...at('2A') })
    expect(view(told).coming).toEqual([
      { name: '2A', state: 'making' },
      { name: '1A', state: 'waiting' },
    ])
  })

  test('[H7] what was handed over is listed newest first, also of a ticket that is still open', () => {
    const told = made(given(send(plain(), plain()), send(plain())), '1A', '2A')
    const gone = onward(told, handOver('2A'), handOver('1A'))
    expect(view(gone).recent.map((one) => one.name)).toEqual(['1A', '2A'])
    expect(view(gone).handedOver).toBe(2)
    const again = onward(gone, { type: 'remake', ...at('2A') })
    expect(view(again).recent.map((one) => one.name)).toEqual(['1A'])
    expect(view(again).coming.map((one) => one.name)).toContain('2A')
  })

  test('[H7] only the last few are listed, however many went', () => {
    const names = Array.from({ length: 9 }, (_, index) => `${index + 1}A`)
    const told = made(given(...names.map(() => send(plain()))), ...names)
    const gone = onward(told, ...names.map(handOver))
    expect(view(gone).recent.map((one) => one.name)).toEqual(['9A', '8A', '7A', '6A', '5A', '4A'])
  })
})

describe('what may not be given out', () => {
  const tell = (name: string) =>
    ({ type: 'tellNeed', ...at(name), asked: 'needs', needs: [milk] }) as const
  const acknowledge = (name: string, foodInIt: boolean) =>
    ({ type: 'acknowledge', ...at(name), foodInIt }) as const

  test('[H8] a made build that is held stands apart, with why, until it is thrown out', () => {
    const told = made(ready(send(plain()), send(plain())), '1A', '2A')
    const held = onward(told, tell('1A'))
    expect(view(held).held).toMatchObject([
      { name: '1A', why: { reason: 'need', needs: [milk] }, item: 'Garden chicken' },
    ])
    expect(view(held).shelf.map((one) => one.name)).toEqual(['2A'])
    const out = onward(held, acknowledge('1A', true))
    expect(view(out).held).toEqual([])
    expect(view(out).coming).toEqual([{ name: '1A', state: 'waiting' }])
  })

  test('[H9] a handed-over build whose guest told late is to be found, the oldest first', () => {
    const told = made(ready(send(plain()), send(plain())), '1A', '2A')
    const gone = onward(told, handOver('1A'), handOver('2A'), tell('2A'), tell('1A'))
    expect(view(gone).toFind.map((one) => one.name)).toEqual(['2A', '1A'])
    expect(view(gone).toFind[0]).toMatchObject({ why: { reason: 'need', needs: [milk] } })
    expect(view(gone).recent).toEqual([])
    const back = onward(gone, acknowledge('2A', true))
    expect(view(back).toFind.map((one) => one.name)).toEqual(['1A'])
    expect(view(back).coming.map((one) => one.name)).toEqual(['2A'])
    const kept = onward(back, acknowledge('1A', false))
    expect(view(kept).toFind).toEqual([])
    expect(view(kept).recent.map((one) => one.name)).toEqual(['1A'])
  })

  test('[H3] a need that was told late hides the name too', () => {
    const named = { ...send(plain()), name: 'Guest One' } as ReturnType<typeof send>
    const told = made(ready(named), '1A')
    expect(view(told).shelf[0]?.nameKey).not.toBeNull()
    const ticket = findTicket(running(onward(told, tell('1A'))), 1)
    expect(ticket && shownNameKey(ticket)).toBeNull()
  })

  test('[H10] of look-alikes each says what only its own mark has', () => {
    const without = choose('garden-chicken', { cheddar: 'no', slaw: 'no' })
    const other = choose('garden-chicken', { cheddar: 'no' })
    const told = made(given(send(without, other, choose('harbor-tuna'))), '1A', '1B', '1C')
    expect(view(told).shelf.map((one) => one.alike?.names ?? null)).toEqual([['1B'], ['1A'], null])
    const said = view(told).shelf.map((one) => (one.alike ? markLines(one.alike.differs) : null))
    expect(said).toEqual([['NO SLAW'], [], null])
  })

  test('[H11] cautions that the guest was told are said with the mark, by name', () => {
    const almonds = { placement: 'in', portions: 1, because: 'asked' } as const
    const choice = { ...withoutMilk(), parts: { ...withoutMilk().parts, almonds } }
    const accepted = ready({ type: 'acceptCaution', build: choice, reason: 'guest-accepts' })
    const told = made(onward(accepted, send({ ...choice, caution: 1 })), '1A')
    const [first] = view(told).shelf
    expect(first?.told).toMatchObject([
      { component: 'Toasted almonds', need: 'milk', why: 'contact' },
    ])
    expect(handOverEn.told(first?.told ?? [])).toMatch(
      /^Told, and accepted: Toasted almonds touches/,
    )
  })
})
