import { recalc } from "./commands/recalc";
import { runCommand } from "./run-command";

runCommand(recalc);
