import { benchStages } from "./specimen-stages";

for (const line of benchStages()) console.log(line);
