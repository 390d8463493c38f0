/**
 * Passphrases that are tried first, as letters and figures without signs or capitals; figures after
 * them are no matter. A small list of our own, from memory: the habits of keyboards, greetings,
 * seasons, sports and kitchens.
 */
export const COMMON: ReadonlySet<string> = new Set(
  `password passwort passw0rd p4ssword passphrase mypassword thepassword password1 secret topsecret
  letmein letmeinnow letmeinplease openup opensesame changeme changeit changethis default temporary
  qwerty qwertyui qwertyuiop qwertz qwertzui azerty azertyui asdfgh asdfghjk asdfghjkl zxcvbnm
  zxcvbnmm 1q2w3e4r 1q2w3e4r5t q1w2e3r4 qazwsxedc qazwsx 1qaz2wsx zaq12wsx abc abcd abcde abcdef
  abcdefg abcdefgh abcd1234 abc12345 a1b2c3d4 aa123456 123456a 123abc 1234abcd 123qwe 123456qwerty
  welcome welcomeback welcomehome hello hellohello hellothere helloworld goodmorning goodbye
  iloveyou iloveyous iloveu loveyou lovely lover forever together princess sunshine superstar
  superman batman spiderman pokemon starwars dragon dragons monkey monkeys master masters shadow
  football baseball basketball volleyball softball hockey soccer tennis swimming champion champions
  summer autumn winter spring january february march april monday tuesday wednesday thursday friday
  saturday sunday birthday christmas holiday holidays vacation whatever nothing trustno trustnoone
  admin administrator adminadmin root rootroot toor user username guest guestguest test testtest
  testing tester trial login logmein manager supervisor teacher teachers student students principal
  school schools highschool middleschool college academy classroom homework education library
  cafeteria canteen lunchroom lunch lunchlady lunchtime breakfast dinner supper kitchen kitchens
  cooking cookie cookies chocolate cheese cheddar chicken sandwich burrito pizza pizzapizza taco
  tacotuesday salad noodles banana orange strawberry blueberry peaches ginger pepper butter
  buttercup coffee coffeetime foodsafety foodservice servicetime personincharge incharge thelead
  lead leader levelscoop scoop scoops station alderhall computer internet wireless network laptop
  tablet tablets samsung android keyboard mustang corvette ferrari mercedes toyota harley diamond
  silver golden purple yellow orange rainbow butterfly flower flowers jessica jennifer michelle
  ashley nicole daniel michael jordan jordan23 andrew anthony thomas charlie william matthew joshua
  robert hunter hannah tigger buster killer ranger soccer cowboy cowboys eagles tigers lions bears
  steelers yankees redsox lakers bulldog bulldogs wildcats panthers hawks falcons mascot homeroom
  hallpass honorroll yearbook graduation freshman sophomore senior seniors juniors`
    .split(/\s+/)
    .filter((one) => one !== ''),
)
