package app.coilside.support

import org.json.JSONObject

/** A visit's events as the core has stored them. */
class Record(val texts: List<String>) {
    val events: List<JSONObject> = texts.map(::JSONObject)

    fun of(kind: String): List<JSONObject> = events.filter { it.getString("kind") == kind }

    /** Why the chain does not hold; none if it does. */
    fun broken(): String? {
        var before = "0".repeat(64)
        texts.forEachIndexed { at, text ->
            val event = JSONObject(text)
            if (event.getInt("seq") != at) return "event $at has number ${event.getInt("seq")}"
            if (event.getString("prev") != before) return "event $at does not follow"
            before = sha256(text.toByteArray())
        }
        return null
    }

    /**
     * Event kind by event kind, each with what it is about: what the scripted visits of all shells must come to alike
     * (`tests/browser/lib/record.mjs` has the same). The place comes whenever the device has one, so it is listed last.
     */
    fun kinds(): List<String> {
        val lines = events.filter { it.getString("kind") !in BESIDE }.map { event ->
            val about = ABOUT.firstNotNullOfOrNull { name -> event.optString(name).takeIf { event.has(name) && it != "null" } }
            listOfNotNull(event.getString("kind"), about?.takeIf { it.isNotEmpty() }).joinToString(" ")
        }
        val (places, others) = lines.partition { it.startsWith("place-") }
        return others + places
    }

    private companion object {
        /** What a technician adds of their own accord, and what a device notes of its own. */
        val BESIDE = setOf("finding-added", "customer-noted", "device-restarted", "facts-lapsed", "fact-rechecked")
        val ABOUT = listOf("step", "reading", "slot", "excursion", "condition", "mix")
    }
}
