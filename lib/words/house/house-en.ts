/** What the server says at its edge: settings, addresses, refused hosts, start and end. */
export const houseWords = {
  settingsWrong: 'Level Scoop did not start, because of its settings:',
  setting: (name: string, value: string, what: string) =>
    `  ${name}=${JSON.stringify(value)} won't do: it must be ${what}.`,
  portIs: 'a whole number from 0 to 65535 (0: any free one)',
  hostIs: 'an address of this machine such as 0.0.0.0, or a name of it',
  dataIs: 'the path of a folder',
  fileIs: 'the path of a PEM file',
  hostsIs: 'names, or names:port, with commas between, such as "scoop.school.example"',
  modeIs: 'production, development or test',
  logIs: 'fatal, error, warn, info, debug, trace or silent',
  screensIs: 'on or off',
  portTaken: (port: number) =>
    `Port ${port} is in use by another program, or Level Scoop runs already ("npm stop" ends it). Another port: PORT=${port + 1} npm start. Nothing was started.`,
  portForbidden: (port: number) =>
    `This account may not open port ${port}. Choose one above 1023, such as PORT=4321 npm start. Nothing was started.`,
  hostNotHere: (host: string) =>
    `This machine has no address ${host} to listen on (HOST). Leave HOST away to listen on all. Nothing was started.`,
  notListening: (reason: string) => `Level Scoop could not listen: ${reason}. Nothing was started.`,
  screensMissing: 'The screens are not built. Start with "npm start", which builds them.',
  running: (version: string) => `Level Scoop ${version} is running.`,
  dataFolder: (path: string) => `  Data folder    ${path}`,
  thisMachine: (url: string) => `  This machine   ${url}`,
  tablets: (url: string, network: string) => `  Tablets        ${url}   (${network})`,
  onlyHere: '  Tablets        not reachable: HOST names this machine only',
  noNetwork:
    '  Tablets        no network found: connect this machine to one, then open this page again',
  makeHouse: (url: string) =>
    `Nobody has set this station up yet. An adult scans this or opens it, once: ${url}\nUntil then only its demo can be walked through, on this machine.`,
  cautions:
    'Devices join by a code that the lead’s screen shows; local code and the certified person in charge decide. If this machine asks, let Node accept connections. Ctrl+C or "npm stop" ends it.',
  stopping: 'Stopping: finishing what was accepted ...',
  stopped: 'Stopped. Everything that was accepted is stored.',
  stoppedHard: 'Stopping took too long and was cut short. What was accepted is stored.',
  failed:
    'Level Scoop ended because of a fault in it. What was accepted is stored; start it again.',
  hostRefused: (host: string) =>
    `This server does not answer to "${host}". Open it by this machine's address, as shown where it was started. To allow a name of your own, start it with LEVEL_SCOOP_HOSTS=NAME.\n`,
  readOnly: 'This address is only read: GET.\n',
  writeOnly: 'This address only takes what is set: POST.\n',
  noScreens: 'This server was started without its screens.\n',
  failedPage: 'The page could not be made. The service goes on; open the page again.\n',
} as const
