import AxeBuilder from "@axe-core/playwright";
import { expect, type Locator, type Page, test } from "@playwright/test";
import { accessOf, joinAs, TUTOR } from "./support/people";

test.use(TUTOR);

const LONG_NAME = "Wilhelmina Theodora van den Bergh-Castellanos y Fuentes-Roth";
const LIST = [
  "\uFEFFName;Sign-in name",
  "Jörg Müller",
  "Petra Novak;petra",
  "Gerd Brunner;ge rd",
  `"${LONG_NAME}";wilhelmina-theodora.vandenberg`,
  ...Array.from({ length: 6 }, (_, n) => `Welding Learner ${"ABCDEF"[n]}`),
].join("\r\n");

const textOf = async (element: Locator) => (await element.textContent()) ?? "";

async function expectAccessible(page: Page): Promise<void> {
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
}

async function expectNothingCut(page: Page): Promise<void> {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(wide, "the page is no wider than the screen").toBeLessThanOrEqual(0);
}

async function makeClass(page: Page, name: string): Promise<void> {
  await page.goto("/desk/classes");
  await page.getByLabel("Name of the class").fill(name);
  await page.getByRole("button", { name: "Make the class" }).click();
  await expect(page.getByRole("heading", { name, level: 1 })).toBeVisible();
}

test("a class from a pasted list: slips, a first sign-in by QR code, and a password of one's own", async ({
  page,
  browser,
}) => {
  await page.goto("/desk");
  await page.getByRole("link", { name: "Classes" }).click();
  await expectAccessible(page);
  await makeClass(page, "Boilermakers");
  await expect(page.getByText("Nobody is in this class yet")).toBeVisible();
  await expectAccessible(page);

  await page.getByRole("link", { name: "Add learners from a list" }).click();
  await page.getByRole("button", { name: "Check the list" }).click();
  await expect(page.getByText("There is no name in the list yet")).toBeVisible();
  // an office program's file in the old code page of Western Windows
  await page.getByLabel("Take a CSV file").setInputFiles({
    name: "list.csv",
    mimeType: "text/csv",
    buffer: Buffer.from("J\xf6rg M\xfcller", "latin1"),
  });
  const list = page.getByLabel("One learner a line");
  await expect(list).toHaveValue("Jörg Müller");
  await list.fill(LIST);
  await page.getByRole("button", { name: "Check the list" }).click();
  const rows = page.getByRole("region", { name: "Rows of the list" });
  await expect(rows.getByRole("row", { name: /Jörg Müller/ })).toContainText("joerg.mueller");
  await expect(rows.getByRole("row", { name: /Gerd Brunner/ })).toContainText("Use 3 to 30 letters from a to z");
  await expect(page.getByRole("button", { name: "Add 9 learners and leave out one row" })).toBeVisible();
  await expectAccessible(page);
  await list.press("End");
  await list.pressSequentially(" ");
  await expect(page.getByRole("button", { name: /^Add / }), "what was shown is out of date").toHaveCount(0);
  await page.getByRole("button", { name: "Check the list again" }).click();
  await page.getByRole("button", { name: "Add 9 learners and leave out one row" }).click();

  const slips = page.getByRole("region", { name: "9 sign-in slips" });
  await expect(slips).toBeFocused();
  await expectAccessible(page);
  for (const size of [
    { width: 1440, height: 900 },
    { width: 1024, height: 768 },
  ]) {
    await page.setViewportSize(size);
    await expectNothingCut(page);
  }
  await slips.getByLabel("Address on the slips").fill("not an address");
  await expect(slips.getByText("Write an address such as")).toBeVisible();
  await expect(slips.getByRole("button", { name: "Print the slips" })).toBeDisabled();
  await slips.getByLabel("Address on the slips").fill("https://welding-workshop.training-centre.example:8443/desk");
  const code = await textOf(
    slips
      .getByRole("row", { name: /Petra Novak/ })
      .getByRole("cell")
      .last(),
  );

  // on paper: slips and nothing else, none cut, with eight a page
  await page.emulateMedia({ media: "print" });
  await expect(page.getByRole("heading", { level: 1 })).toBeHidden();
  const paper = await page.locator(".slip").evaluateAll((all) =>
    all.map((slip) => ({
      isWhole: slip.scrollHeight <= slip.clientHeight && slip.scrollWidth <= slip.clientWidth,
      text: slip.textContent ?? "",
    })),
  );
  expect(paper).toHaveLength(9);
  expect(paper.filter(({ isWhole }) => !isWhole)).toEqual([]);
  expect(paper[1].text).toContain("https://welding-workshop.training-centre.example:8443");
  expect(paper[1].text).toContain(code);
  expect(paper[2].text).toContain(LONG_NAME);
  const pdf = await page.pdf({ format: "A4", preferCSSPageSize: true });
  expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)).toHaveLength(2);
  await page.emulateMedia({ media: null });

  // the learner, on a tablet that somebody else is signed in on
  const asked: string[] = [];
  const tablet = await browser.newContext({ storageState: undefined, viewport: { width: 1024, height: 768 } });
  const own = await tablet.newPage();
  own.on("request", (request) => asked.push(request.url()));
  await joinAs(own, "Tabitha Frost", "tabitha");
  await own.goto(`/slip#name=petra&code=${code}`);
  await expect(own.getByLabel("Sign-in name")).toHaveValue("petra");
  await expect(own).toHaveURL("/slip");
  await expect(own.getByText("Tabitha Frost is signed in on this device")).toBeVisible();
  await expectAccessible(own);
  await own.getByRole("button", { name: "Sign in" }).click();
  await expect(own).toHaveURL("/own-password");
  expect(
    asked.filter((url) => url.includes(code)),
    "no server was asked for the code",
  ).toEqual([]);
  for (const elsewhere of ["/", "/desk", "/account", "/history", "/drills", "/join", "/sign-in"]) {
    await own.goto(elsewhere);
    await expect(own, elsewhere).toHaveURL("/own-password");
  }
  const refused = await own.request.post("/api/practice", { data: {} });
  expect(refused.status()).toBe(403);
  expect(await refused.json()).toMatchObject({ code: "own-password-needed" });
  await expectAccessible(own);
  await own.getByLabel("New password").fill(code);
  await own.getByLabel("The same again").fill(code);
  await own.getByRole("button", { name: "Keep this password" }).click();
  await expect(own.getByText("That is the code from your slip")).toBeVisible();
  await own.getByLabel("New password").fill("torch and mirror");
  await own.getByLabel("The same again").fill("torch and mirror");
  await own.getByRole("button", { name: "Keep this password" }).click();
  await expect(own.getByRole("heading", { name: "Good to see you, Petra" })).toBeVisible();
  await own.goto("/account");
  await expect(own.getByRole("region", { name: "Your classes" })).toContainText("Boilermakers with Maren Okafor");
  await expect(own.getByRole("region", { name: "Where you are signed in" })).toContainText("this one");
  await expectAccessible(own);
  await own.getByRole("button", { name: "Sign out" }).first().click();
  await own.goto(`/slip#name=petra&code=${code}`);
  await own.getByRole("button", { name: "Sign in" }).click();
  await expect(own.getByText("A code works until its owner has chosen a password")).toBeVisible();
  await tablet.close();

  await page.getByRole("link", { name: "Go to the class" }).click();
  await expect(page.getByRole("rowheader", { name: "Petra Novak" })).not.toContainText("no own password");
  await expect(page.getByRole("rowheader", { name: "Jörg Müller" })).toContainText("no own password yet");
  await page.reload();
  await expect(page.getByText("One-time code", { exact: true }), "codes are not to be had again").toHaveCount(0);
});

test("members get extra time, new codes, another class and leave; a class is archived", async ({ page, browser }) => {
  await makeClass(page, "Night shift");
  await makeClass(page, "Day shift");
  await page.getByRole("link", { name: "Add learners from a list" }).click();
  await page.getByLabel("One learner a line").fill("Dora Klein\nEmil Gross");
  await page.getByRole("button", { name: "Check the list" }).click();
  await page.getByRole("button", { name: "Add 2 learners" }).click();
  await page.getByRole("link", { name: "Go to the class" }).click();

  const change = async (name: string, act: (dialog: Locator) => Promise<void>) => {
    await page.getByRole("button", { name: `Change ${name}` }).click();
    await act(page.getByRole("dialog", { name }));
  };
  const members = page.getByRole("region", { name: "Members", exact: true });
  await change("Dora Klein", async (dialog) => {
    await expectAccessible(page);
    await dialog.getByLabel("Other factor").fill("7");
    await dialog.getByRole("button", { name: "Set the time" }).click();
  });
  await expect(members.getByRole("alert")).toContainText("1 to 5 with at most two decimals");
  await change("Dora Klein", async (dialog) => {
    await dialog.getByLabel("Other factor").fill("1,75");
    await dialog.getByRole("button", { name: "Set the time" }).click();
  });
  await expect(page.getByRole("row", { name: /Dora Klein/ })).toContainText("× 1.75");

  // her device is signed out as soon as she gets a new code
  await page.getByLabel("Choose Dora Klein").check();
  await page.getByRole("button", { name: "New codes and slips for 1 chosen" }).click();
  const question = page.getByRole("dialog", { name: "New codes for one learner?" });
  await expect(question).toContainText("Their present passwords stop working at once");
  await question.getByRole("button", { name: "Make new codes" }).click();
  const slip = page.getByRole("region", { name: "One sign-in slip" });
  await expect(slip).toBeFocused();
  const code = await textOf(slip.getByRole("cell").last());
  const visitor = await (await browser.newContext({ storageState: undefined })).newPage();
  await visitor.goto("/sign-in");
  await visitor.getByLabel("Sign-in name").fill("dora.klein");
  await visitor.getByLabel("Password").fill(code);
  await visitor.getByRole("button", { name: "Sign in" }).click();
  await expect(visitor, "the code typed at the sign-in").toHaveURL("/own-password");
  await change("Dora Klein", (dialog) => dialog.getByRole("button", { name: "Sign out everywhere" }).click());
  await expect(members.getByText("Dora Klein is signed out everywhere")).toBeVisible();
  await visitor.goto("/");
  await expect(visitor).toHaveURL("/sign-in");
  await visitor.context().close();

  await change("Emil Gross", async (dialog) => {
    await dialog.getByLabel("Move Emil Gross into").selectOption({ label: "Night shift" });
    await dialog.getByRole("button", { name: "Move" }).click();
  });
  await expect(members.getByText("Emil Gross is in the class Night shift now")).toBeVisible();
  await change("Dora Klein", (dialog) => dialog.getByRole("button", { name: "Take out of the class" }).click());
  await expect(members.getByText("Dora Klein is out of this class")).toBeVisible();
  await expect(page.getByRole("region", { name: "Have left this class" })).toContainText("Dora Klein");

  await page.getByRole("button", { name: "Archive this class" }).click();
  await expect(page.getByText("Archived on")).toBeVisible();
  await expect(page.getByRole("link", { name: "Add learners from a list" })).toHaveCount(0);
  await expectAccessible(page);
  await page.getByRole("button", { name: "Take it back into use" }).click();
  await expect(page.getByRole("link", { name: "Add learners from a list" })).toBeVisible();
});

test("a join code lets newcomers and signed-in learners in, and a learner ends a session elsewhere", async ({
  page,
  browser,
}) => {
  await makeClass(page, "Pipe bay");
  await page.getByRole("button", { name: "Make a code" }).click();
  const code = await textOf(page.locator("[data-join-code]"));

  const bruno = accessOf("bruno");
  const signedIn = async () => {
    const own = await (await browser.newContext({ storageState: undefined })).newPage();
    await own.goto("/sign-in");
    await own.getByLabel("Sign-in name").fill(bruno.signInName);
    await own.getByLabel("Password").fill(bruno.password);
    await own.getByRole("button", { name: "Sign in" }).click();
    await expect(own.getByRole("heading", { name: "Good to see you, Bruno" })).toBeVisible();
    return own;
  };
  const own = await signedIn();
  await own.goto("/account");
  await own.getByRole("link", { name: "Join a class with its code" }).click();
  await own.getByLabel("Join code").fill("KMT-00");
  await own.getByRole("button", { name: "Join the class" }).click();
  await expect(own.getByText("A join code has 6 letters and digits")).toBeVisible();
  await expectAccessible(own);
  await own.getByLabel("Join code").fill(code.toLowerCase().replace("-", " "));
  await own.getByRole("button", { name: "Join the class" }).click();
  await expect(own.getByText("You are in the class Pipe bay.")).toBeVisible();

  const elsewhere = await signedIn();
  await own.goto("/account");
  const devices = own.getByRole("region", { name: "Where you are signed in" });
  await devices.getByRole("button", { name: "Sign out there: Chrome on Linux" }).first().click();
  await expect(devices.getByText("You are signed out there.")).toBeVisible();
  await elsewhere.goto("/history");
  await expect(elsewhere).toHaveURL("/sign-in?to=%2Fhistory");

  await elsewhere.goto("/join");
  await elsewhere.getByLabel("Join code").fill(code);
  await expectAccessible(elsewhere);
  await elsewhere.getByLabel("Your name").fill("Quentin Hale");
  await elsewhere.getByLabel("Sign-in name").fill("quentin");
  await elsewhere.getByLabel("Password", { exact: true }).fill("torch and mirror");
  await elsewhere.getByLabel("The same again").fill("torch and mirror");
  await elsewhere.getByRole("button", { name: "Make the account" }).click();
  await expect(elsewhere.getByRole("heading", { name: "Good to see you, Quentin" })).toBeVisible();

  await page.reload();
  for (const name of ["Bruno Katz", "Quentin Hale"]) await expect(page.getByRole("rowheader", { name })).toBeVisible();
  // Bruno goes back to where other tests look for him
  await page.getByRole("button", { name: "Change Bruno Katz" }).click();
  await page.getByRole("dialog", { name: "Bruno Katz" }).getByRole("button", { name: "Take out of the class" }).click();
  await expect(page.getByText("Bruno Katz is out of this class")).toBeVisible();
  await page.getByRole("button", { name: "Switch it off" }).click();
  await expect(page.getByText("nobody joins by a code now")).toBeVisible();
  for (const one of [own, elsewhere]) await one.context().close();
});
