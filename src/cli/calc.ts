import { calc } from "./commands/calc";
import { runCommand } from "./run-command";

runCommand(calc);
