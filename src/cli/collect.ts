import { collect } from "./commands/collect";
import { runCommand } from "./run-command";

runCommand(collect);
