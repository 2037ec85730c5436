package app.coilside.frame

/** How far down each screen was read, pixels, so that whoever comes back is where they were. */
class Scrolled {
    private val places = HashMap<String, Int>()

    operator fun get(place: String): Int = places[place] ?: 0

    operator fun set(place: String, down: Int) {
        places[place] = down
    }
}
