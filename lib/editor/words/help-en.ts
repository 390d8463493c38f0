/** What each field of the set-up is for, in one sentence. */

export const menuHelpEn = {
  held: 'Readings, times and what may be set aside at close follow from how a well holds its food.',
  size: 'The line is drawn and checked by it, and it says how much a pan holds.',
  depth: 'How deep the pan is says how much it holds: measured inside, as the trade sells them.',
  whatGoesIn: 'What this one pan holds: what a guest takes, takes on the side, or leaves out.',
  name: 'What the crew and the guests call it, on every screen and paper.',
  short: 'How the name is set on a narrow pan: two lines of at most 12 letters each.',
  mark: 'What is written of it on a wrap by hand; left empty, its short name.',
  plural: 'So that a sentence says “are” where there are many, as with almonds.',
  made: 'Allergies and diets are answered from the labels of what it is made of, and from nothing else.',
  amount: 'As on the card: “2 #10 cans”, “1/2 cup”, “to taste” are enough.',
  yields: 'What the recipe makes, as on the card: “serves 24” or “4 qt”. Batches are scaled by it.',
  kind: 'It decides how hot it is cooked. Until somebody says it, the highest limit holds.',
  cookedIn: 'Food cooked in a microwave has a limit of its own, and stands covered afterwards.',
  dryHere:
    'Bread, seeds, crisp toppings: nobody is asked to read it, and no time runs. Not for what spoils.',
  roast: 'A whole roast has a hot holding limit of its own.',
  reheatable:
    'Whether it may be cooled, stored and heated again: if not, it is thrown out at close.',
  tool: 'What one portion is taken with: the count of portions left follows from it.',
  scoop: 'The number on the scoop is how many level scoops make a quart; makers’ colors differ.',
  levels: 'How many level scoops or ladles one portion is.',
  density:
    'What a level cup of it weighs. Without it, it can be portioned by weight or pieces only.',
  densitySource: 'Where the weight comes from: “10 level scoops weighed”, or the table’s name.',
  grams: 'What one tong-full weighs, from a few that you weighed.',
  pieces: 'How many pieces one portion is.',
  cup: 'What the lidded cup holds; it is filled before and counted whole.',
  squeezes: 'How many squeezes one portion is, and what some of them weighed.',
  holds: 'How many portions the pan holds, from the pan’s usable capacity and the portion.',
  usual: 'What the pan is usually loaded with; loading proposes it.',
  tare: 'What the empty pan weighs, so that it can be weighed with its food in it.',
  capacity: 'Your own usable capacity, where your pan differs from the table’s.',
  remake:
    'Where it is made again during a service, by whom, and in how many minutes: advice comes early enough.',
  perLoad: 'How many portions one load makes, and how many minutes each further load takes.',
  side: 'Lidded cups exist for it, so that a guest can have it on the side.',
  extra: 'What one more portion costs the guest.',
  cost: 'What one portion costs you, for advice on what to keep; it may stay empty.',
  warm: 'It is warmed on something before it goes in, for so many seconds.',
  backup:
    'A pan in reserve. Protected: lidded, with its own scoop, not reached over. Only such a pan serves a guest who keeps apart.',
  itemName: 'What the menu calls it.',
  price: 'What the guest pays for it as it usually comes.',
  heart: 'What the item is named for: it can’t be left out, and without it the item is sold out.',
  base: 'What it comes in or on, of which the guest chooses one.',
  placement: 'What a guest gets who says nothing more: in it, on the side, or only if asked for.',
  required: 'It can’t be left out of this item.',
  touches:
    'A guest who keeps apart is told of everything that touches what they avoid. Say no only where it really never does.',
  timeZone: 'Dates, times and use-by days are counted in it.',
  locale: 'How numbers, dates and money are written.',
  currency: 'The three letters of your money.',
  scale: 'On which your thermometers read.',
  allergenSet: 'Which allergens are asked about: the nine of the US or the fourteen of the EU.',
  ownAllergens: 'Allergens that you ask about beside those, as mustard or coconut.',
  cautions:
    'Whether the person in charge may accept a caution together with the guest, or it is always a no.',
  notListed:
    'What it means when a label’s whole list was read and names nothing of an allergen that its law makes it name.',
  readAgain:
    'A label that was read longer ago counts as not known until it is read again. 90 days is common practice, no source.',
  tax: 'Whether prices are what the guest pays, and the rate that is in them or comes on top.',
  collectBy: 'How long made food may wait on the shelf: after that it isn’t handed over.',
  everyMin:
    'How often temperatures are read. Four hours is the model code’s limit for discarding; two leave time to act.',
  doors: 'When guests come: demand is counted from then, not from the opening of the service.',
  assemblers: 'How many build at the same time, for advice on pace.',
  timeProcedure:
    'Food may be held by the clock alone only where a written procedure is on site (Food Code 3-501.19).',
  limits:
    'What is read is held to these. Local code and the certified person in charge decide; what they say otherwise is written here with its source.',
  limitSource:
    'The code or the letter of your health department that says so, with its paragraph: it is said beside the limit wherever the limit is.',
  limitKnown:
    'A limit that asks less than the model code holds only where somebody read it in the code itself.',
  rushes:
    'When guests come all at once: readings that fall due in it are asked for before it begins.',
  crewMeal: 'At close it is offered for food whose history allows it. Local code decides.',
  reheatOn:
    'Where cooled food is heated again. A hot well holds and never heats, so it isn’t among them.',
  sanitizer:
    'Its strength is read with a strip and recorded. What the container directs goes before these figures.',
  toolsAtHand:
    'When a scoop is missing, one of these is proposed; one that belongs to other food touches it.',
  vessels:
    'What goes into it at once, not to the brim: “20 qt”, “4 full pans, 2 1/2 in”. A recipe that doesn’t fit is split into even batches.',
  bell: 'A day’s class periods by the bell. Tasks and the crew are planned on them; a short day has its own.',
  crew: 'Who is there in a period, by initials, each once. No names are kept.',
  certified: 'Certified food protection manager.',
  neverTouched:
    'Left empty, the open service counts what touched until now as touching until it closes; what touches now counts at once.',
  passphrase:
    'Publishing is done by an adult who leads or is in charge, each with their own passphrase.',
} as const
