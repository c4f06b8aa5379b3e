import { peopleArguments, usage } from './people/arguments.ts';
import { closeAccount } from './people/close.ts';
import { invite } from './people/invite.ts';
import { listPeople } from './people/list.ts';
import { setUpOwner } from './people/owner.ts';
import { setPassword } from './people/password.ts';
import { type PeopleCommand, withStore } from './people/with-store.ts';
import { runCommand } from './product/run-command.ts';

const verbs: Readonly<Record<string, PeopleCommand>> = {
  owner: setUpOwner,
  list: listPeople,
  invite,
  close: closeAccount,
  password: setPassword,
};

await runCommand({
  args: peopleArguments(process.argv.slice(2), Object.keys(verbs)),
  usage,
  run: (args) => withStore((store) => verbs[args.verb]?.(store, args) ?? Promise.resolve(2)),
});
