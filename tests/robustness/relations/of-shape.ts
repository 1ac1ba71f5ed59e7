import {
  column,
  conserved,
  type Draw,
  figure,
  figures,
  grows,
  invariant,
  inverse,
  monotone,
  rising,
  rows,
  times,
} from "./mechanism";

const sizes = (draw: Draw) => ({
  length: draw.figure(80, 900, 1),
  width: draw.figure(15, 60, 1),
  thickness: draw.figure(2, 8, 0.1),
});

/** A blade by three stations. */
function stations(draw: Draw) {
  const [length, width, thickness] = [
    draw.figure(200, 900, 1),
    draw.figure(20, 60, 1),
    draw.figure(3, 8, 0.1),
  ];
  return {
    x: column([0, length / 2, length]),
    width: column([width, width * 0.9, width * 0.5]),
    thickness: column([thickness, thickness * 0.8, thickness * 0.5]),
    grind: draw.oneOf(["diamond", "lenticular", "rectangle"]),
  };
}

type Stations = ReturnType<typeof stations>;

const scaled = ({ x, width, thickness, grind }: Stations, factor: number) => {
  const by = (cells: number[][]) => cells.map((row) => row.map((value) => value * factor));
  return { x: by(x), width: by(width), thickness: by(thickness), grind };
};

/** Mass properties of a thing that swings. */
const swung = (draw: Draw) => ({
  mass: draw.figure(300, 2000),
  balance: draw.figure(50, 200),
  inertia: draw.figure(0.02, 0.2),
});

/** Shapes and masses, bending and ringing. */
export const SHAPE_RELATIONS = [
  invariant("MASS goes with the length", "MASS", (draw) => {
    const asked = sizes(draw);
    return [figure("MASS", { ...asked, length: 2 * asked.length }), times(figure("MASS", asked), 2)];
  }),
  invariant("MASS goes with the density", "MASS", (draw) => {
    const asked = sizes(draw);
    return [
      times(figure("MASS", { ...asked, density: 8 }), 7.5),
      times(figure("MASS", { ...asked, density: 7.5 }), 8),
    ];
  }),
  invariant("MASS of a blade twice as large is eight times as much", "MASS", (draw) => {
    const { length, width, thickness } = sizes(draw);
    const twice = { length: 2 * length, width: 2 * width, thickness: 2 * thickness };
    return [
      figure("MASS", { ...twice, density: 7.85 }),
      times(figure("MASS", { length, width, thickness, density: 7.85 }), 8),
    ];
  }),
  grows("MASS", "thickness", (draw) => ({
    length: 200,
    width: draw.figure(20, 40),
    values: rising(draw, 2, 8),
  })),
  grows("MASS", "edge", (draw) => ({
    length: 200,
    width: 30,
    thickness: 4,
    values: rising(draw, 0, draw.figure(1, 3)),
  })),
  monotone(
    "SECTION_AREA: a diamond is no larger than the lens, the lens than the rectangle",
    "SECTION_AREA",
    (draw) => {
      const { width, thickness } = sizes(draw);
      return ["diamond", "lenticular", "rectangle"].map((grind) =>
        figure("SECTION_AREA", { grind, width, thickness }),
      );
    },
  ),
  invariant("SECTION_AREA of twice the size is four times as large", "SECTION_AREA", (draw) => {
    const [grind, { width, thickness }] = [
      draw.oneOf(["diamond", "lenticular", "flat", "rectangle"]),
      sizes(draw),
    ];
    return [
      figure("SECTION_AREA", { grind, width: 2 * width, thickness: 2 * thickness }),
      times(figure("SECTION_AREA", { grind, width, thickness }), 4),
    ];
  }),
  monotone("FULLERED_AREA is under SECTION_AREA", "FULLERED_AREA SECTION_AREA", (draw) => {
    const asked = { grind: "lenticular", width: draw.figure(40, 55, 1), thickness: draw.figure(5, 7, 0.1) };
    return [
      figure("FULLERED_AREA", {
        ...asked,
        fullerWidth: draw.figure(8, 14),
        fullerDepth: draw.figure(0.4, 1),
      }),
      figure("SECTION_AREA", asked),
    ];
  }),
  grows(
    "FULLERED_AREA",
    "fullerDepth",
    (draw) => ({
      ...{ grind: "lenticular", width: 45, thickness: 6, fullerWidth: draw.figure(10, 14) },
      values: rising(draw, 0.3, 1.2),
    }),
    { falls: true },
  ),
  grows("FULLER_WIDTH", "depth", (draw) => ({ radius: draw.figure(10, 40), values: rising(draw, 0.3, 3) })),
  grows("FULLER_WIDTH", "radius", (draw) => ({ depth: draw.figure(0.3, 3), values: rising(draw, 10, 60) })),
  inverse("WHEEL of the depth of HOLLOW_DEPTH", "WHEEL HOLLOW_DEPTH", (draw) => {
    const [diameter, height] = [draw.figure(100, 400), draw.figure(10, 30)];
    return [diameter, figure("WHEEL", { height, depth: figure("HOLLOW_DEPTH", { diameter, height }) }), 0.01];
  }),
  inverse("EDGE_ANGLE of the bevel of EDGE_BEVEL", "EDGE_ANGLE EDGE_BEVEL", (draw) => {
    const [edge, angle] = [draw.figure(0.2, 1), draw.figure(10, 30)];
    const height = figure("EDGE_BEVEL", { edge, angle });
    // The face is the slope over a bevel of that height, half the edge wide.
    const face = height === undefined ? undefined : Math.hypot(height, edge / 2);
    return [angle, figure("EDGE_ANGLE", { edge, face }), 0.05];
  }),
  grows("GRIND_ANGLE", "thickness", (draw) => ({
    width: draw.figure(20, 50),
    edge: 0.4,
    values: rising(draw, 1, 8),
  })),
  invariant("SET_RADIUS goes with the thickness", "SET_RADIUS", (draw) => {
    const [thickness, hrc] = [draw.figure(1, 6), draw.figure(45, 60, 1)];
    return [
      figure("SET_RADIUS", { thickness: 2 * thickness, hrc }),
      times(figure("SET_RADIUS", { thickness, hrc }), 2),
      0.5,
    ];
  }),
  conserved("STATIONS: a station put in between on the straight line changes nothing", "STATIONS", (draw) => {
    const blade = stations(draw);
    const between = (cells: number[][]) => [
      cells[0],
      [((cells[0]?.[0] ?? 0) + (cells[1]?.[0] ?? 0)) / 2],
      ...cells.slice(1),
    ];
    const more = {
      ...blade,
      x: between(blade.x),
      width: between(blade.width),
      thickness: between(blade.thickness),
    };
    return [figures("STATIONS", more).slice(0, 3), figures("STATIONS", blade).slice(0, 3), 0.01];
  }),
  invariant("STATIONS twice as large: mass by 8, inertia by 32", "STATIONS", (draw) => {
    const blade = stations(draw);
    const [, mass, balance, inertia] = figures("STATIONS", blade);
    const [, mass2, balance2, inertia2] = figures("STATIONS", scaled(blade, 2));
    return [
      [mass2, balance2, inertia2],
      [times(mass, 8), times(balance, 2), times(inertia, 32)],
    ];
  }),
  invariant("STATIONS measured from another place: the balance moves along", "STATIONS", (draw) => {
    const [blade, by] = [stations(draw), draw.figure(10, 100, 1)];
    const [, mass, balance, inertia] = figures("STATIONS", blade);
    const moved = figures("STATIONS", { ...blade, x: blade.x.map(([at = 0]) => [at + by]) });
    return [moved.slice(1), [mass, balance === undefined ? undefined : balance + by, inertia], 1e-6];
  }),
  conserved("BLADE_AT: all of the mass lies from the heel to the tip", "BLADE_AT STATIONS", (draw) => {
    const blade = stations(draw);
    return [figure("BLADE_AT", { at: 0, ...blade }, 4), figure("STATIONS", blade, 1), 0.01];
  }),
  grows("BLADE_AT", "at", (draw) => ({ ...stations(draw), values: rising(draw, 0, 190) }), {
    column: 4,
    falls: true,
  }),
  conserved("ASSEMBLY: the masses add up", "ASSEMBLY", (draw) => {
    const mass = [draw.figure(300, 900), draw.figure(50, 300)];
    return [
      figure("ASSEMBLY", { mass: column(mass), position: column([100, -60]) }),
      (mass[0] ?? 0) + (mass[1] ?? 0),
    ];
  }),
  invariant("ASSEMBLY does not ask which part comes first", "ASSEMBLY", (draw) => {
    const [mass, position] = [
      [draw.figure(300, 900), draw.figure(50, 300)],
      [draw.figure(80, 200), -60],
    ];
    const of = (turned: (list: number[]) => number[]) =>
      figures("ASSEMBLY", {
        mass: column(turned([...mass])),
        position: column(turned([...position])),
        inertia: column(turned([0.1, 0])),
      });
    return [of((list) => list), of((list) => list.reverse())];
  }),
  inverse("POMMEL: the assembly with it balances where it was wanted", "POMMEL ASSEMBLY", (draw) => {
    const [restMass, restBalance, wanted] = [
      draw.figure(700, 1200),
      draw.figure(180, 300),
      draw.figure(60, 150),
    ];
    const pommel = figure("POMMEL", { restMass, restBalance, pommelAt: -180, wanted });
    const whole = { mass: column([restMass, pommel]), position: column([restBalance, -180]) };
    return [wanted, pommel === undefined ? undefined : figure("ASSEMBLY", whole, 1), 0.01];
  }),
  inverse(
    "PERCUSSION_CENTRE of the centre of percussion is where it was held",
    "PERCUSSION_CENTRE",
    (draw) => {
      const [thing, held] = [swung(draw), draw.figure(-80, 20)];
      const centre = figure("PERCUSSION_CENTRE", { ...thing, held });
      return [
        held,
        centre === undefined ? undefined : figure("PERCUSSION_CENTRE", { ...thing, held: centre }),
        0.01,
      ];
    },
  ),
  invariant("EFFECTIVE_MASS at the balance is the whole mass", "EFFECTIVE_MASS", (draw) => {
    const thing = swung(draw);
    return [figure("EFFECTIVE_MASS", { ...thing, at: thing.balance }), thing.mass, 0.01];
  }),
  grows(
    "EFFECTIVE_MASS",
    "at",
    (draw) => {
      const thing = swung(draw);
      return { ...thing, values: [1, 100, draw.figure(200, 600)].map((away) => thing.balance + away) };
    },
    { falls: true },
  ),
  grows("SWING_INERTIA", "period", (draw) => ({
    mass: draw.figure(500, 1500),
    distance: draw.figure(80, 200),
    values: rising(draw, 1.2, 2),
  })),

  grows("FLEX", "load", (draw) => ({ ...stations(draw), values: rising(draw, 1, 20) })),
  invariant("FLEX twice as large: stiffness by 2", "FLEX", (draw) => {
    const blade = stations(draw);
    return [
      figure("FLEX", { ...scaled(blade, 2), load: 5 }, 1),
      times(figure("FLEX", { ...blade, load: 5 }, 1), 2),
      1e-6,
    ];
  }),
  grows("FLEX", "heldAt", (draw) => ({ ...stations(draw), load: 5, values: rising(draw, 0, 80) }), {
    falls: true,
  }),
  inverse(
    "THICKNESS_FOR_FLEX: the blade so much thicker has the stiffness",
    "THICKNESS_FOR_FLEX FLEX",
    (draw) => {
      const blade = { ...stations(draw), grind: "rectangle" };
      const stiffness = times(figure("FLEX", { ...blade, load: 5 }, 1), draw.figure(0.6, 1.6));
      const factor = figure("THICKNESS_FOR_FLEX", { ...blade, stiffness });
      const thicker = {
        ...blade,
        thickness: blade.thickness.map(([mm = 0]) => [mm * (factor ?? Number.NaN)]),
      };
      return [
        1,
        factor === undefined
          ? undefined
          : (figure("FLEX", { ...thicker, load: 5 }, 1) ?? 0) / (stiffness ?? 1),
        0.01,
      ];
    },
  ),
  inverse("EDGE_LOAD of the edge of EDGE_FOR_LOAD", "EDGE_LOAD EDGE_FOR_LOAD", (draw) => {
    const asked = { hrc: draw.figure(54, 62, 1), angle: draw.figure(12, 22) };
    const load = draw.figure(5, 40);
    const behind = figure("EDGE_FOR_LOAD", { ...asked, load });
    return [
      1,
      behind === undefined ? undefined : (figure("EDGE_LOAD", { ...asked, behind }, 3) ?? Number.NaN) / load,
      0.02,
    ];
  }),
  grows("EDGE_LOAD", "behind", (draw) => ({
    hrc: 58,
    angle: draw.figure(12, 25),
    values: rising(draw, 0.2, 1),
  })),
  grows("EDGE_FOR_LOAD", "load", (draw) => ({
    hrc: 58,
    angle: draw.figure(12, 25),
    values: rising(draw, 5, 60),
  })),
  monotone("RING: the first tone is under the second", "RING", (draw) => {
    const told = figures("RING", stations(draw));
    return [told[0], told[3]];
  }),
  invariant("RING twice as large: half the frequency", "RING", (draw) => {
    const blade = stations(draw);
    return [times(figure("RING", scaled(blade, 2)), 2), figure("RING", blade), 0.01];
  }),
  invariant("RING goes with the root of the density", "RING", (draw) => {
    const blade = stations(draw);
    return [
      times(figure("RING", { ...blade, density: 8 }), Math.sqrt(8 / 7)),
      figure("RING", { ...blade, density: 7 }),
      0.01,
    ];
  }),
  monotone("GRINDS: no grind has more area than the rectangle", "GRINDS SECTION_AREA", (draw) => {
    const grind = draw.oneOf(rows("GRINDS", {}))[0];
    const { width, thickness } = sizes(draw);
    const area = (word: unknown) => figure("SECTION_AREA", { grind: word, width, thickness });
    return [area(grind), area("rectangle")];
  }),
];
