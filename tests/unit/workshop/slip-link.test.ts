import jsQR from "jsqr";
import { encode } from "uqr";
import { describe, expect, test } from "vitest";
import { isOnlyThisComputer, readAddress, readSlipFragment, slipLink } from "@/lib/workshop";

const ACCESS = { signInName: "noor.b_1-x", code: "abcd-efgh-2345" };

describe("the link of a slip", () => {
  test("has name and code in the fragment, and nothing in what a server is asked for", () => {
    const url = new URL(slipLink("https://shop.local:3000", ACCESS));
    expect(url.origin + url.pathname + url.search).toBe("https://shop.local:3000/slip");
    expect(readSlipFragment(url.hash)).toEqual(ACCESS);
  });

  test.each(["", "#", "#name=noor", "#code=abcd", "#name=&code=x", "#top"])("%j says nobody's", (fragment) => {
    expect(readSlipFragment(fragment)).toBeNull();
  });

  // jsQR is a reader with nothing in common with the writer
  test.each([["http://192.168.1.20:3000"], [`https://${"workshop-".repeat(6)}.example`]])(
    "to %s comes out of its QR code",
    (address) => {
      const link = slipLink(address, { ...ACCESS, signInName: "x".repeat(30) });
      const { data, size } = encode(link, { ecc: "M", border: 4 });
      const zoom = 4;
      const pixels = new Uint8ClampedArray((size * zoom) ** 2 * 4).fill(255);
      for (let y = 0; y < size * zoom; y++)
        for (let x = 0; x < size * zoom; x++)
          if (data[Math.floor(y / zoom)][Math.floor(x / zoom)])
            pixels.fill(0, (y * size * zoom + x) * 4, (y * size * zoom + x) * 4 + 3);
      expect(jsQR(pixels, size * zoom, size * zoom)?.data).toBe(link);
    },
  );
});

test.each([
  ["http://192.168.1.20:3000", "http://192.168.1.20:3000"],
  [" 192.168.1.20:3000 ", "http://192.168.1.20:3000"],
  ["shop.local", "http://shop.local"],
  ["https://shop.example/desk/classes?x=1#y", "https://shop.example"],
  ["https://shop.example:443/", "https://shop.example"],
  ["ftp://shop.example", null],
  ["javascript:alert(1)", null],
  ["http://user@shop.example", null],
  ["http://", null],
  ["two words", null],
  ["", null],
])("the address %j is %s", (typed, address) => {
  expect(readAddress(typed)).toBe(address);
});

test.each([
  ["http://localhost:3000", true],
  ["http://127.0.0.1", true],
  ["http://[::1]:3000", true],
  ["http://192.168.1.20", false],
  ["http://localhost.example", false],
])("%s opens this computer only: %s", (address, isOnly) => {
  expect(isOnlyThisComputer(address)).toBe(isOnly);
});
