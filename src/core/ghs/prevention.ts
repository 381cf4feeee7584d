/**
 * What to do beforehand: P101 to P285.
 * The source, its licence, and how a line reads: see source.ts and statement-table.ts.
 */
export const PREVENTION = `
P101|||If medical advice is needed, have product container or label at hand.
P102|||Keep out of reach of children.
P103|||Read carefully and follow all instructions.
P201|||(Deleted) Obtain special instructions before use.
P202|||(Deleted) Do not handle until all safety precautions have been read and understood.
P203|||Obtain, read and follow all safety instructions before use.
P210|||Keep away from heat, hot surface, sparks, open flames and other ignition sources. No smoking.
P211|||Do not spray on an open flame or other ignition source.
P212|||Avoid heating under confinement or reduction of the desensitized agent.
P220|||Keep away from clothing and other combustible materials.
P221|||(Deleted) Take any precaution to avoid mixing with combustibles/...
P222|||Do not allow contact with air.
P223|||Do not allow contact with water.
P230|||Keep wetted with ...
P231|||Handle and store contents under inert gas/...
P232|||Protect from moisture.
P233|||Keep container tightly closed.
P234|||Keep only in original container.
P235|||Keep cool.
P236|||Keep only in original packaging; Division .. in the transport configuraion.
P240|||Ground/bond container and receiving equipment.
P241|||Use explosion-proof [electrical/ventilating/lighting/.../] equipment.
P242|||Use only non-sparking tools.
P243|||Take precautionary measures against static discharge.
P244|||Keep valves and fittings free from oil and grease.
P250|||Do not subject to grinding/shock/friction/...
P251|||Do not pierce or burn, even after use.
P260|||Do not breathe dust/fume/gas/mist/vapors/spray.
P261|||Avoid breathing dust/fume/gas/mist/vapors/spray.
P262|||Do not get in eyes, on skin, or on clothing.
P263|||Avoid contact during pregnancy/while nursing.
P264|||Wash hands [and ...] thoroughly after handling.
P265|||Do not touch eyes.
P270|||Do not eat, drink or smoke when using this product.
P271|||Use only outdoors or in a well-ventilated area.
P272|||Contaminated work clothing should not be allowed out of the workplace.
P273|||Avoid release to the environment.
P280|||Wear protective gloves/protective clothing/eye protection/face protection/hearing protection/...
P281|||(Deleted)Use personal protective equipment as required.
P282|||Wear cold insulating glovesand either face shield or eye protection.
P283|||Wear fire resistant or flame retardant clothing.
P284|||[In case of inadequate ventilation] Wear respiratory protection.
P285|||(Deleted) In case of inadequate ventilation wear respiratory protection.
P231+P232|||Handle and store contents under inert gas/... Protect from moisture.
P264+P265|||Wash hands [and ...] thoroughly after handling. Do not touch eyes.
P235+P410|||(Deleted) Keep cool. Protect from sunlight.
`;
