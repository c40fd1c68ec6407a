// Loaded by --import into the development server, which runs in a process of its own.
import { stampAddresses } from "./address-stamp.mjs";

stampAddresses({ trustsProxy: process.env.TRUST_PROXY === "1" });
