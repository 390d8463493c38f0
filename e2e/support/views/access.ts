/** Who is in: the pages as the lead, a tablet and a stranger see them. The house says so itself. */
import type { Page } from '@playwright/test'
import { on, type View } from './view.ts'

const house = on('/house', 'house')
const join = on('/join', 'join')
const devices = on('/devices', 'devices')
const privacy = on('/privacy', 'privacy')

/** Seen on a lead's device of the house. */
const asLead = (view: View): View => ({
  ...view,
  asLead: true,
  leaves: async (page) => {
    // It goes on asking.
    await page.goto('about:blank')
    await page.context().clearCookies()
  },
})

/** Opened with a secret, while nobody made the house: what the server would say then. */
const unmade = (view: View, secret: string): View => ({
  ...view,
  reach: async (page) => {
    await page.route('**/access', (route) =>
      route.fulfill({
        json: { code: 'done', house: 'none', you: null, mayWalkDemo: true, line: null },
      }),
    )
    await page.goto(`${view.path}${secret}`)
    await page.reload()
    await view.reach?.(page)
  },
  leaves: (page) => page.unroute('**/access'),
})

/** Names and passphrases of both. */
const typed = async (page: Page, name: string, passphrase: string): Promise<void> => {
  await page.getByLabel(/^Name/).fill(name)
  await page.getByLabel('Passphrase', { exact: true }).fill(passphrase)
}

const atSecond = (view: View): View => ({
  ...view,
  reach: async (page) => {
    await view.reach?.(page)
    await typed(page, 'Mara', 'walnut harbour mitten')
    await page.getByRole('button', { name: /^Next/ }).click()
    await typed(page, 'Ms. Okafor', 'kettle lantern')
  },
})

/** Where two lead, so that one can be taken out. */
const twoLead = (view: View): View => ({
  ...view,
  reach: async (page) => {
    const since = Date.now() - 3_600_000
    const at = { joinedAt: since, seenAt: since, isHere: true }
    const adults = [
      { id: 'a-mara', name: 'Mara', role: 'lead' },
      { id: 'a-ines', name: 'Ines', role: 'lead' },
      { id: 'a-okafor', name: 'Ms. Okafor', role: 'in-charge' },
    ]
    const devices = adults
      .slice(0, 2)
      .map(({ id, name }) => ({ ...at, device: id, name, role: 'lead', adult: id, isYou: false }))
    const attempts = { wrong: 0, addresses: 0, refused: 0 }
    await page.route('**/access/devices', (route) =>
      route.fulfill({ json: { code: 'done', devices, adults, attempts } }),
    )
    await page.reload()
    await view.reach?.(page)
  },
  leaves: async (page) => {
    await page.unroute('**/access/devices')
    await view.leaves?.(page)
  },
})

const SECRET = '#ACDE-3467-ACDE-3467'

export const accessViews: readonly View[] = [
  unmade(house('empty', 'quiet', 'Who leads the line?'), SECRET),
  atSecond(unmade(house('the second', 'quiet', 'Who is the person in charge?'), SECRET)),
  house('made before', 'quiet', 'This house is made'),
  unmade(house('no secret', 'quiet', /^Open this page by the address/), ''),
  join('empty', 'quiet', '8 signs to go'),
  join('half', 'quiet', '5 signs to go', [/^K$/, /^7$/, /^Q$/]),
  join('an adult', 'quiet', 'Name is missing', [/adult of this house/]),
  asLead(devices('all', 'quiet', 'Tap a place to let a tablet in.')),
  asLead(devices('a code', 'quiet', 'Point the tablet’s camera here', [/^Counter/])),
  asLead(devices('another adult', 'quiet', 'Another adult', [/^Pans/, /^Another adult/])),
  twoLead(asLead(devices('adults of a place', 'quiet', 'Mara', [/^Pans/]))),
  twoLead(
    asLead(
      devices('a new passphrase', 'quiet', /^Every other device where Ines/, [
        /^Pans/,
        /^Change the passphrase of Ines/,
      ]),
    ),
  ),
  twoLead(
    asLead(
      devices('an adult taken out', 'quiet', /^Ines can’t sign on/, [/^Pans/, /^Take Ines out/]),
    ),
  ),
  asLead(devices('signing off', 'quiet', /^Sign this device off/, [/^Pans/, /^Sign off/])),
  asLead(privacy('all', 'quiet', 'Forget a guest')),
]
