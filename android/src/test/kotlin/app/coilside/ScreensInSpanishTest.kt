package app.coilside

import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** In the language with the longer words, in large letters on a small phone and in half a window. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [34], application = ShellApp::class, qualifiers = "es-w390dp-h844dp-port-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class ScreensInSpanishTest : EveryScreen() {
    @Test
    fun `in Spanish, whose words are longer, every screen can be read, found and touched, in half a window too`() =
        everyScreen(listOf(DAY, LARGE, HALF))
}
