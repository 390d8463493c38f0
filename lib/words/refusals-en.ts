/** A sentence for every refusal, for a student who has a guest in front of them. */
import { isDiet } from '#lib/needs/codes.ts'
import type { NotTaken, Refusal } from '#lib/service/refusal.ts'
import { needName, roleName, stateName } from '#lib/words/service-en.ts'

/** What an id is called on the screens. */
export type NameOf = (id: string) => string

export const sayRefusal = (refusal: Refusal, name: NameOf): string => {
  switch (refusal.code) {
    case 'service-not-open':
      return 'The service isn’t open yet. The lead opens it on the first page.'
    case 'service-already-open':
      return 'A service is open already. Close it before you open another.'
    case 'service-closed':
      return 'This service is closed.'
    case 'no-such-station':
      return 'There is no station of that name.'
    case 'no-such-item':
      return `Nothing called “${refusal.id}” is on the menu.`
    case 'no-such-component':
      return `The line has no “${refusal.id}”.`
    case 'no-such-pan':
      return `The line has no pan “${refusal.id}”.`
    case 'no-such-ticket':
      return `There is no ticket ${refusal.ticket} in this service.`
    case 'no-such-build':
      return `There is no ${refusal.build} in this service.`
    case 'not-of-this-item':
      return `${name(refusal.component)} doesn’t go with ${name(refusal.item)}.`
    case 'base-missing':
      return `Choose what ${name(refusal.item)} comes in.`
    case 'no-cups':
      return `There are no lidded cups for ${name(refusal.component)}: with or no, not on the side.`
    case 'cannot-leave-out':
      return `${name(refusal.item)} without ${name(refusal.component)} isn’t ${name(refusal.item)}. Offer another item.`
    case 'nothing-in-it':
      return 'Nothing is in this order. Choose an item first.'
    case 'too-many-builds':
      return `At most ${refusal.most} on one ticket. Send this, then start another.`
    case 'absurd-portions':
      return `${name(refusal.component)}: 1 to ${refusal.most} portions, or no.`
    case 'absurd-amount':
      return `${name(refusal.pan)} can’t hold that much, or that little. Check the number.`
    case 'sold-out':
      return `Not enough ${name(refusal.component)} is left. Tell the guest, and choose again.`
    case 'not-selling':
      return `We aren’t selling ${name(refusal.id)} now. Tell the guest, and choose again.`
    case 'not-asked':
      return 'Ask about allergies and diet first, and tap what the guest says.'
    case 'not-sure':
      return 'The guest isn’t sure. Call the person in charge before you take this order.'
    case 'contains':
      return isDiet(refusal.need)
        ? `${name(refusal.component)} isn’t ${refusal.need}. Leave it out or choose another item.`
        : `${name(refusal.component)} contains ${needName[refusal.need]}. Leave it out or choose another item.`
    case 'may-contain':
      return `${name(refusal.component)} may contain ${needName[refusal.need]}, its label says. Leave it out, or call the person in charge.`
    case 'unknown-declaration':
      return isDiet(refusal.need)
        ? `We don’t know whether ${name(refusal.component)} is ${needName[refusal.need]}. Leave it out, or call the person in charge.`
        : `We don’t know whether ${name(refusal.component)} contains ${needName[refusal.need]}. Leave it out, or call the person in charge.`
    case 'wrong-state':
      return `${refusal.build} is ${stateName[refusal.state]}, so that can’t be done now.`
    case 'build-stopped':
      return `${refusal.build} was stopped. Assembly must answer it first.`
    case 'nothing-to-acknowledge':
      return `${refusal.build} isn’t stopped.`
    case 'changed-since':
      return `${refusal.build} was changed just now. Look again, then start.`
    case 'handling-not-read':
      return `${refusal.build} is kept apart from something. Read the steps aloud first, then start.`
    case 'short':
      return `Not enough ${name(refusal.component)} for ${refusal.build}. Change a pan, or change the build.`
    case 'pan-not-empty':
      return `${name(refusal.pan)} isn’t empty. Change the pan instead, or correct the count.`
    case 'already-so':
      return 'It’s like that already.'
    case 'builds-open':
      return `${refusal.count} still to hand over or cancel before closing.`
    case 'id-used-for-something-else':
      return 'This was already sent with something else in it. Send it again as a new one.'
    case 'could-not-decide':
      return 'That went wrong here, and nothing was changed. Tell the lead.'
  }
}

export const sayNotTaken = (because: NotTaken): string => {
  switch (because.code) {
    case 'not-the-protocol':
      return 'The server doesn’t understand this message. Reload the page.'
    case 'too-large':
      return 'This message is too large.'
    case 'newer-version':
      return 'This screen is newer than the server. Restart the server.'
    case 'older-version':
      return 'This screen is older than the server. Reload the page.'
    case 'role-may-not':
      return `${roleName[because.role]} may not do this.`
    case 'no-such-service':
      return 'There is no such service. Reload the page.'
    case 'busy':
      return 'The server is busy. It is sent again by itself.'
    case 'closing':
      return 'The server is stopping. It is sent again when it is back.'
  }
}
