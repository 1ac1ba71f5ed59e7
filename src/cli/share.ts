import { share } from "./commands/share";
import { runCommand } from "./run-command";

runCommand(share);
