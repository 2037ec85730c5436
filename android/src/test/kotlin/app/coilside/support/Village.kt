package app.coilside.support

import org.json.JSONArray
import org.json.JSONObject

/** The visit that the scripted visits of all shells do: `office/src/demo/scenario.rs` has the same. Nobody and nothing in it is real. */
object Village {
    const val LATITUDE_DEG = 1.2345
    const val LONGITUDE_DEG = 2.3456
    const val SITE = "Mill House"
    const val ASSIGNMENT = "LW-0001-next"

    /** What the office would hand over, as `Door.assigned` takes it. */
    fun assignments(): String = JSONArray().put(mill()).toString()

    private fun mill() = JSONObject()
        .put("id", ASSIGNMENT)
        .put("due", "2026-05-04")
        .put("reason", "Yearly service")
        .put(
            "site",
            JSONObject()
                .put("name", SITE)
                .put("address", "1 Mill Lane, Lower Weir")
                .put("latitude_deg", LATITUDE_DEG)
                .put("longitude_deg", LONGITUDE_DEG)
                .put("note", "Isolator behind the shed door. The dog is friendly."),
        )
        .put("owner", JSONObject().put("name", "Edda Marsh").put("phone", "555 0107").put("language", "en"))
        .put("units", JSONArray().put(unit()))

    private fun unit(): JSONObject {
        val history = JSONArray()
        for ((reading, value, unit) in PAST) {
            history.put(JSONObject().put("reading", reading).put("value", value).put("unit", unit).put("date", "2025-04-28"))
        }
        return JSONObject()
            .put("letter", "A")
            .put("unit", "LW-0001")
            .put("maker", "Tarnwick")
            .put("model", "Add-On 9")
            .put("serial", "TW9-20417")
            .put("pack", "add-on-water-heater")
            .put("refrigerant", "R290")
            .put("history", history)
    }

    private val PAST = listOf(
        Triple("air-on-found", "17.5", "Cel"),
        Triple("air-off-found", "12.0", "Cel"),
        Triple("water-in-found", "38.5", "Cel"),
        Triple("water-out-found", "42.5", "Cel"),
        Triple("flow-found", "9.5", "L/min"),
        Triple("power-found", "940", "W"),
        Triple("insulation", "180.0", "MOhm"),
        Triple("supply-ph", "7.4", "[pH]"),
    )
}
