import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { overTheLine } from '#lib/rooms/orders/words/over-the-line-en.ts'
import { turnedEn } from '#lib/rooms/orders/words/turned-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { findBuild } from '#lib/service/tickets.ts'
import {
  assemblyPan,
  assemblyRests,
  beginning,
  counterPan,
  finishButton,
  guestAnswered,
  itemRow,
  pickUpNumber,
  saying,
  sendButton,
  shelfCard,
  start,
  startButton,
  tapUntil,
  ticketIsSent,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'
import {
  askItsGuest,
  giveAlone,
  needTile,
  readBackOf,
  spoken,
  whatFits,
} from './support/need-hands.ts'

const MARK = 'NO CHEDDAR'
const FITS = counter.rowFitsWith(counter.rowWithout(['Cheddar', 'Lemon yogurt sauce']))

test('an allergy and a change that fits: asked, checked, carried to the hand', async ({ job }) => {
  const [counterPage, assembly, handOver, pickUp] = await Promise.all([
    job.open('/counter'),
    job.open('/assembly'),
    job.open('/hand-over'),
    job.open('/pick-up'),
  ])
  await job.signOn()
  const { lead } = job
  const before = lead.inPan()

  await test.step('every item has its answer as soon as the need is tapped', async () => {
    await expect(counterPage.getByText(counter.question)).toBeVisible()
    await needTile(counterPage, 'milk').click()
    await expect(needTile(counterPage, 'milk')).toContainText(counter.asked('milk', 'keep-apart'))
    await expect(whatFits(counterPage, 'Garden chicken')).toHaveText(
      saying('Garden chicken', FITS, counter.left(24)),
    )
    await expect(whatFits(counterPage, 'Bean and pepper')).toHaveText(
      saying(
        'Bean and pepper',
        counter.rowFitsWith(
          counter.rowWithout(['Cheddar', 'Toasted almonds', 'Lemon yogurt sauce']),
        ),
        counter.left(24),
      ),
    )
    await expect(whatFits(counterPage, 'Harbor tuna')).toContainText(counter.rowAsk('Tuna salad'))
    await expect(whatFits(counterPage, 'Harbor tuna')).toContainText('cheddar')
    await expect(counterPage.getByText(counter.saySharedLine)).toBeVisible()
    await needTile(counterPage, 'milk').click()
    await expect(whatFits(counterPage, 'Garden chicken')).toHaveCount(0)
    await needTile(counterPage, 'milk').click()
    await expect(whatFits(counterPage, 'Garden chicken')).toContainText(FITS)
    await counterPage.getByRole('button', { name: counter.saidNeeds, exact: true }).click()
  })

  await test.step('pans that the need rules out say no, and why, down to the ingredient', async () => {
    await itemRow(counterPage, 'Garden chicken').click()
    await expect(itemRow(counterPage, 'Garden chicken')).toContainText(FITS)
    for (const [short, words] of [
      ['Cheddar', ['Cheddar']],
      ['Yogurt sauce', ['Yogurt', 'sauce']],
    ] as const)
      await expect(counterPan(counterPage, short)).toHaveText(
        saying(...words, counter.pan.no, overTheLine.contains('milk')),
      )
    await expect(counterPan(counterPage, 'Sesame slaw')).toHaveText(
      saying('Sesame', 'slaw', counter.pan.taken('in', 1)),
    )
    await counterPan(counterPage, 'Yogurt sauce').click()
    await expect(
      counterPage.getByText('Lemon yogurt sauce: plain yogurt contains milk.').last(),
    ).toBeVisible()
    await expect(counterPan(counterPage, 'Yogurt sauce')).toContainText(counter.pan.no)
  })

  const sentence = spoken(lead.state(), [
    { say: 'item', item: 'garden-chicken', base: 'pita', asItComes: false },
    {
      say: 'need',
      components: ['cheddar', 'yogurt-sauce'],
      need: 'milk',
      why: 'contains',
      touches: null,
    },
    { say: 'backup', components: ['slaw'] },
    { say: 'keep-apart', codes: ['milk'] },
    { say: 'price', cents: 650 },
  ])

  await test.step('read back; the guest reads the turned screen and agrees, or it is not sent', async () => {
    await expect(readBackOf(counterPage)).toHaveText(sentence)
    expect(sentence).toContain('No cheddar or lemon yogurt sauce, since they contain milk.')
    expect(sentence).toContain('we can’t promise that no milk gets in')
    await expect(sendButton(counterPage)).toHaveCount(0)
    const agree = counterPage.getByRole('button', { name: turnedEn.agree, exact: true })
    await tapUntil(counterPage.getByRole('button', { name: beginning(counter.turn) }), agree)
    const turned = counterPage.getByRole('region', { name: turnedEn.title })
    await expect(turned).toContainText(turnedEn.need('milk', 'keep-apart'))
    await expect(turned).toContainText(turnedEn.shared)
    const lists = turned.getByRole('list')
    await expect(lists.filter({ hasText: 'Sesame slaw' })).toHaveText(
      saying('Pita', 'Herb chicken', 'Roast peppers', 'Sesame slaw'),
    )
    await expect(lists.filter({ hasText: 'Cheddar' })).toHaveText(
      saying('Cheddar', 'Lemon yogurt sauce'),
    )
    await tapUntil(
      counterPage.getByRole('button', { name: turnedEn.notRight, exact: true }),
      readBackOf(counterPage),
    )
    await expect(sendButton(counterPage)).toHaveCount(0)
    await tapUntil(counterPage.getByRole('button', { name: beginning(counter.turn) }), agree)
    await tapUntil(agree, sendButton(counterPage))
    expect(lead.state().nextTicket).toBe(1)
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 1)
  })

  await test.step('read aloud once, before it can be started', async () => {
    await expect(assembly.getByRole('heading', { name: assemblyEn.readAloud })).toBeVisible()
    await expect(assembly.locator('main')).toContainText(assemblyEn.keepApart(['milk']))
    const steps = assembly.getByRole('region', { name: assemblyEn.readAloud })
    await expect(steps.getByRole('listitem')).toHaveText([...assemblyEn.stepsFor(['Sesame slaw'])])
    await expect(startButton(assembly, '1A')).toHaveCount(0)
    await expect.poll(() => findBuild(lead.state(), 1, 'A')?.state).toBe('waiting')
    await tapUntil(
      assembly.getByRole('button', { name: assemblyEn.wasRead, exact: true }),
      startButton(assembly, '1A'),
    )
    await start(assembly, '1A')
  })

  await test.step('its pans stand wide and shut; the slaw comes from its back-up pan', async () => {
    await expect(assembly.getByText(assemblyEn.stepsShort)).toBeVisible()
    await expect(assemblyPan(assembly, 'Cheddar')).toHaveText(
      saying('Cheddar', assemblyEn.no, assemblyEn.lidOn, 'MILK'),
    )
    await expect(assemblyPan(assembly, 'Yogurt sauce')).toHaveText(
      saying('Yogurt', 'sauce', assemblyEn.no, assemblyEn.lidOn, 'MILK'),
    )
    const slaw = assemblyPan(assembly, 'Sesame slaw')
    for (const words of [assemblyEn.backUp, assemblyEn.notThisPan])
      await expect(slaw).toContainText(words)
    await expect(assemblyPan(assembly, 'Pita')).not.toContainText(assemblyEn.lidOn)
    for (const short of ['Pita', 'Herb chicken', 'Roast peppers'])
      await expect(assemblyPan(assembly, short)).not.toContainText(assemblyEn.backUp)
    await expect(assembly.getByText('KEEP FROM MILK')).toBeVisible()
    await expect(finishButton(assembly)).toContainText(assemblyEn.cleanGloves)
    await expect(pickUpNumber(pickUp, 'making', '1A')).toBeVisible()
    await tapUntil(finishButton(assembly), assemblyRests(assembly))
  })

  await test.step('handed over alone, after an open question', async () => {
    await expect(shelfCard(handOver, '1A')).toContainText(handOverEn.keptApart)
    await expect(
      handOver.getByRole('button', { name: handOverEn.handOver('1A'), exact: true }),
    ).toHaveCount(0)
    await askItsGuest(handOver, '1A')
    await expect(handOver.locator('main')).not.toContainText(/milk/i)
    await guestAnswered(handOver)
    for (const words of [MARK, 'NO SAUCE', 'KEEP FROM MILK'])
      await expect(handOver.getByText(words, { exact: true })).toBeVisible()
  })

  await test.step('pick-up shows the number, and nothing of what or for whom', async () => {
    await expect(pickUpNumber(pickUp, 'made', '1A')).toBeVisible()
    const seen = `${await pickUp.locator('main').textContent()} ${await pickUp.locator('main').ariaSnapshot()}`
    expect(seen).not.toMatch(/milk|cheddar|chicken|keep|apart|allerg/i)
  })

  await giveAlone(handOver, '1A')
  await expect(pickUpNumber(pickUp, 'made', '1A')).toHaveCount(0)
  await expect.poll(() => lead.state().handedOver).toBe(1)
  expect(lead.inPan()).toMatchObject({
    cheddar: before.cheddar,
    'yogurt-sauce': before['yogurt-sauce'],
  })

  const log = await job.log()
  const sent = log.filter(({ type }) => type === 'ticketSent')
  expect(sent).toHaveLength(1)
  expect(sent[0]).toMatchObject({
    builds: [
      {
        choice: {
          item: 'garden-chicken',
          base: 'pita',
          agreed: true,
          caution: null,
          needs: [{ code: 'milk', handling: 'keep-apart', reason: null }],
          parts: { cheddar: { placement: 'no' }, 'yogurt-sauce': { placement: 'no' } },
        },
      },
    ],
  })
  expect(log.flatMap(({ type }) => (/^build/.test(type) ? [type] : []))).toEqual([
    'buildStarted',
    'buildFinished',
    'buildHandedOver',
  ])
})
