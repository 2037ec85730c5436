package app.coilside

import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** By day and night, and in large letters on a small phone; and what the picture of all screens shows. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class ScreensTest : EveryScreen() {
    @Test
    fun `in English every screen can be read, found and touched, and they are drawn side by side`() {
        everyScreen(listOf(DAY, NIGHT, LARGE))
        sheet()
    }
}
