/** A sentence for every refusal, for a student who has a guest in front of them. */

import type { NotTaken, Refusal } from '#lib/service/refusal.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { isDiet } from '#lib/station/codes/codes.ts'
import { list } from '#lib/words/counted-en.ts'
import { sayDate } from '#lib/words/day-en.ts'
import { sayFoodRefusal } from '#lib/words/food-refusals-en.ts'
import { sayLabelProblem } from '#lib/words/label-problems-en.ts'
import { isOfPlan, sayPlanRefusal } from '#lib/words/refusals/plan-refusals-en.ts'
import { isOfPrep, sayPrepRefusal } from '#lib/words/refusals/prep-refusals-en.ts'
import type { SayClock } from '#lib/words/safety-en.ts'
import type { NameOf } from '#lib/words/said-here.ts'
import { needName, roleName, savedForName, screenName, stateName } from '#lib/words/service-en.ts'
import { sayUnknown } from '#lib/words/unknown-en.ts'

/** A moment where no screen says it in its station's zone. */
const anEarlierTime: SayClock = () => 'the time on its label'

export const sayRefusal = (
  refusal: Refusal,
  name: NameOf,
  clock: SayClock = anEarlierTime,
): string => {
  switch (refusal.code) {
    case 'service-not-open':
      return 'The service isn’t open yet. The lead opens it on the first page.'
    case 'service-already-open':
      return 'A service is open already. Close it before you open another.'
    case 'service-closed':
      return 'This service is closed.'
    case 'unknown':
      return sayUnknown(refusal.what, refusal.id, name)
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
    case 'lacks':
      return refusal.lacks
        .map(({ letter, ...lack }) => `${letter}: ${sayRefusal(lack, name, clock)}`)
        .join(' ')
    case 'not-asked':
      return 'Ask about allergies and diet first, and tap what the guest says.'
    case 'not-sure':
      return 'The guest isn’t sure. Call the person in charge before you take this order.'
    case 'need-dropped':
      return `${sayBuild(refusal.build)}: the guest’s need (${needName(refusal.need)}) is taken back only by the person in charge. Or cancel ${sayBuild(refusal.build)} and take a new order.`
    case 'contains':
      return isDiet(refusal.need)
        ? `${name(refusal.component)} isn’t ${refusal.need}. Leave it out or choose another item.`
        : `${name(refusal.component)} contains ${needName(refusal.need)}. Leave it out or choose another item.`
    case 'may-contain':
      return `${name(refusal.component)} may contain ${needName(refusal.need)}, its label says. Leave it out, or call the person in charge.`
    case 'not-listed':
      return `The labels of ${name(refusal.component)} don’t list ${needName(refusal.need)}, and here that isn’t enough. Leave it out, or call the person in charge.`
    case 'unknown-declaration':
      return isDiet(refusal.need)
        ? `We don’t know whether ${name(refusal.component)} is ${needName(refusal.need)}. Leave it out, or call the person in charge.`
        : `We don’t know whether ${name(refusal.component)} contains ${needName(refusal.need)}. Leave it out, or call the person in charge.`
    case 'contact-not-known':
      return `Nobody has said what ${name(refusal.component)} touches, so ${needName(refusal.need)} can’t be kept apart. Call the person in charge.`
    case 'shared-contact':
      return `${name(refusal.component)} shares contact with ${name(refusal.touches)}, so ${needName(refusal.need)} can’t be kept apart. Leave it out or choose another item.`
    case 'caution':
      return refusal.why === 'contact' || refusal.why === 'soiled'
        ? `${name(refusal.component)} shares contact with ${name(refusal.touches ?? refusal.component)}, and the guest said ${needName(refusal.need)}. Only the person in charge can accept that with the guest.`
        : refusal.why === 'may-contain'
          ? `The label of ${name(refusal.component)} warns, and the guest said ${needName(refusal.need)}. Only the person in charge can accept that with the guest.`
          : refusal.why === 'not-listed'
            ? `The labels of ${name(refusal.component)} only don’t list ${needName(refusal.need)}. Only the person in charge can accept that with the guest.`
            : `Whether ${name(refusal.component)} suits ${needName(refusal.need)} isn’t known. Only the person in charge can accept that with the guest.`
    case 'nothing-to-accept':
      return 'There is no caution in this order to accept. Send it as it is.'
    case 'no-one-in-charge':
      return 'Nobody in charge is signed on, so nothing can be kept apart. Call the person in charge to sign on.'
    case 'not-in-charge':
      return 'Only the person in charge may do this, with their passphrase. Call them.'
    case 'not-lead':
      return 'Only the lead may do this, on Pans.'
    case 'label-contradicts':
      return refusal.problem
        ? `The new label of ${name(refusal.ingredient)} isn’t recorded. ${sayLabelProblem(refusal.problem)}`
        : `What the new label of ${name(refusal.ingredient)} declares and what it is made of don’t agree. Read the label again.`
    case 'needs-not-checked':
      return refusal.why === 'stale'
        ? 'The labels here are older than the station’s newest, so needs can’t be checked. Call the person in charge.'
        : 'Needs can’t be checked now. Don’t take this order: call the person in charge.'
    case 'not-read-back':
      return 'Read the order back to the guest first, then send.'
    case 'said-changed':
      return `What was said of ${refusal.letter} changed before the order came in. Read it back to the guest again, then send.`
    case 'not-agreed':
      return `Turn the screen to the guest of ${refusal.letter}, and let them tap agree.`
    case 'build-held':
      return refusal.reason === 'need'
        ? `${sayBuild(refusal.build)} is held: its guest told a need after it was sent. Change it or cancel it.`
        : refusal.reason === 'label'
          ? `${sayBuild(refusal.build)} is held: a label changed, and it doesn’t suit its guest any more. Change it or cancel it.`
          : refusal.reason === 'off-sale'
            ? `${sayBuild(refusal.build)} is held: a pan that it took from, or its shelf, is out of limits. The person in charge decides, or it is thrown out and made again.`
            : `${sayBuild(refusal.build)} is held: another food got into a pan, or a back-up pan isn’t ready. Change it or cancel it.`
    case 'fits-no-more':
      return `${sayBuild(refusal.build)} doesn’t suit its guest as things are, and this program should have held it. Don’t give it out: call the person in charge.`
    case 'pan-soiled':
      return `A wrong scoop was in ${name(refusal.pan)}. Wash the pan first, and say that it is washed.`
    case 'made-food-is-waste':
      return `${sayBuild(refusal.build)} is made, so food is in it: throw it out, then answer yes.`
    case 'thrown-out-whole':
      return refusal.because === 'made'
        ? `${sayBuild(refusal.build)} is made, so all of it is thrown out.`
        : `${sayBuild(refusal.build)} is kept apart, and a wrong scoop was in one of its pans: throw all of it out.`
    case 'not-in-build':
      return `${sayBuild(refusal.build)} takes no ${name(refusal.component)}. Look again.`
    case 'food-in-it-unclear':
      return `Say once what was in ${sayBuild(refusal.build)}, or that nothing was.`
    case 'cup-stays-out':
      return `The cup of ${name(refusal.component)} may be older than its pan, or must not be served. Throw it out with ${sayBuild(refusal.build)}.`
    case 'mixed-up-with-nothing':
      return 'Name two builds or more that can’t be told apart.'
    case 'wrong-state':
      return `${sayBuild(refusal.build)} is ${stateName[refusal.state]}, so that can’t be done now.`
    case 'made-elsewhere':
      return `${sayBuild(refusal.build)} is being made at ${screenName(refusal.screen)}. Look again, or take it over from there.`
    case 'build-stopped':
      return `${sayBuild(refusal.build)} was stopped. Assembly must answer it first.`
    case 'nothing-to-acknowledge':
      return `${sayBuild(refusal.build)} isn’t stopped.`
    case 'changed-since':
      return `${sayBuild(refusal.build)} was changed just now. Look again first.`
    case 'handling-not-read':
      return `${sayBuild(refusal.build)} is kept apart from something. Read the steps aloud first, then start.`
    case 'short':
      return `Not enough ${name(refusal.component)} for ${sayBuild(refusal.build)}. Change a pan, or change the build.`
    case 'pan-not-empty':
      return `${name(refusal.pan)} isn’t empty. Change the pan instead, or correct the count.`
    case 'say-what-was-put-in':
      return `${name(refusal.pan)} was counted to nothing. Load it, or say that the count was a mistake.`
    case 'already-so':
      return 'It’s like that already.'
    case 'kept':
      return `The rest of ${name(refusal.component)} is saved for ${list(
        refusal.for.map((one) => savedForName(one, name)),
        'and',
      )}. Offer something else, or ask the lead.`
    case 'closes-before-now':
      return `${refusal.time} is past. Say when this service closes.`
    case 'reading-unclear':
      return `Say one thing of ${name(refusal.pan)}: what was counted, what it weighs, or how full it looks.`
    case 'no-tare':
      return `Nobody has said what the empty pan of ${name(refusal.pan)} weighs. Count it, or look how full it is.`
    case 'not-by-weight':
      return `${name(refusal.pan)} is counted in pieces, not weighed.`
    case 'no-scoop':
      return `${name(refusal.component)} isn’t portioned by a scoop or ladle.`
    case 'scoop-carries':
      return refusal.into === refusal.component
        ? `That tool was in ${name(refusal.from)}: it would carry ${needName(refusal.need)} into ${name(refusal.into)}. Take another.`
        : `That tool goes back to ${name(refusal.into)}: it would carry ${needName(refusal.need)} there out of ${name(refusal.from)}. Take another.`
    case 'too-many-measures':
      return `At most ${refusal.most} level measures a portion. Take a larger tool.`
    case 'scoop-far-off':
      return `A portion of ${name(refusal.component)} would be ${Math.abs(refusal.percent)} % too ${refusal.percent > 0 ? 'heavy' : 'light'}. The lead says yes to that, or chooses other measures.`
    case 'no-scoop-fits':
      return `No tool at hand may go into ${name(refusal.component)}. Wash one, or stop selling it.`
    case 'not-short':
      return `${sayBuild(refusal.build)} isn’t short any more.`
    case 'builds-open':
      return `${refusal.count} still to hand over or cancel before closing.`
    case 'guests-to-find':
      return `Guests to find before closing: ${refusal.count}. Hand-over says when each is found.`
    case 'id-used-for-something-else':
      return 'This was already sent with something else in it. Send it again as a new one.'
    case 'could-not-decide':
      return 'That went wrong here, and nothing was changed. Tell the lead.'
    default:
      if (isOfPrep(refusal)) return sayPrepRefusal(refusal, name, clock)
      return isOfPlan(refusal)
        ? sayPlanRefusal(refusal, name, sayDate)
        : sayFoodRefusal(refusal, name, clock)
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
    case 'wrong-passphrase':
      return 'That isn’t the passphrase. Type it again.'
    case 'no-passphrase':
      return 'Nobody is in charge of this station yet. An adult sets it up, with what the laptop shows.'
    case 'too-many-tries':
      return 'Too many wrong passphrases. Wait 15 minutes, or use another device.'
    case 'not-proved':
      return 'This device only looks at the demo. Join it to the station first.'
    case 'not-joined':
      return 'This device has to join again. It is sent by itself then.'
    case 'no-such-service':
      return 'There is no such service. Reload the page.'
    case 'busy':
      return 'The server is busy. It is sent again by itself.'
    case 'closing':
      return 'The server is stopping. It is sent again when it is back.'
  }
}
