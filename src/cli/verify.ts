import { verify } from "./commands/verify";
import { runCommand } from "./run-command";

runCommand(verify);
